import { spawnSync } from "node:child_process";

/** What a process took. */
export interface Taken {
  /** Processor time, ms. */
  readonly cpu: number;
  /** Most memory at a time, MB. */
  readonly memory: number;
  readonly status: number | null;
}

/**
 * Prints at the end what the process itself took. Where Linux tells it, the most memory is that of the program alone:
 * `maxRSS` also counts what the process that started it held.
 */
const HOOK = `process.on("exit", () => {
  const { readFileSync, writeSync } = require("node:fs");
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  let most = maxRSS;
  try {
    most = Number(/VmHWM:\\s+(\\d+)/.exec(readFileSync("/proc/self/status", "utf8"))[1]);
  } catch {}
  writeSync(2, "\\ntaken " + (userCPUTime + systemCPUTime) / 1000 + " " + most / 1024);
});`;
const PRELOAD = `data:text/javascript,${encodeURIComponent(
  `import { createRequire } from "node:module"; const require = createRequire("${"file:///"}"); ${HOOK}`,
)}`;

/** Runs Node and reads what it took: processor time counts the process alone, however busy the machine is. */
export function node(args: readonly string[], input = ""): Taken {
  const given = ["--import", PRELOAD, ...args];
  const { stderr, status } = spawnSync(process.execPath, given, { input, encoding: "utf8", maxBuffer: 1e9 });
  const [, cpu, memory] = /taken ([\d.]+) ([\d.]+)\s*$/.exec(stderr) ?? [];
  if (cpu === undefined) throw new Error(`${args.join(" ")} did not end: ${stderr}`);
  return { cpu: Number(cpu), memory: Number(memory), status };
}

/** One of our commands; throws where it fails. Status 1 is an answer that asks for attention. */
export function command(name: string, args: readonly string[], input = ""): Taken {
  const taken = node(["src/cli/start.cjs", `src/cli/${name}.ts`, ...args], input);
  if (taken.status !== 0 && taken.status !== 1)
    throw new Error(`${name} ${args.join(" ")} ended with status ${taken.status}`);
  return taken;
}

/** Processor time of any program with all it starts, ms, by the shell's own account. */
export function programTime(program: string, args: readonly string[]): number {
  const { stdout } = spawnSync("sh", ["-c", '"$@" >/dev/null 2>&1; times', "sh", program, ...args], {
    encoding: "utf8",
  });
  const [, children = ""] = stdout.trim().split("\n");
  const seconds = [...children.matchAll(/(\d+)m([\d.]+)s/g)].map(([, m, s]) => 60 * Number(m) + Number(s));
  return 1000 * seconds.reduce((sum, one) => sum + one, 0);
}

/** The least of several runs: what is left of a figure once the disturbances are gone. */
export function least(runs: number, measure: () => number): number {
  return Math.min(...Array.from({ length: runs }, measure));
}

/** Processor time of an action in this process, ms, the least of several runs. */
export function cpuTime(action: () => unknown, runs = 5): number {
  return least(runs, () => {
    const before = process.cpuUsage();
    action();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
}
