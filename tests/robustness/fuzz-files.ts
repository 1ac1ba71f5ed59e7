import { type ChildProcess, spawn } from "node:child_process";
import { createInterface } from "node:readline";

/** Longer than this, a file counts as one that hangs: the budget of a calculation is 20 s. */
const MOST_MS = 60_000;

interface Opened {
  readonly file: number;
  readonly outcome: string;
  readonly kilobytes: number;
}

interface Told extends Opened {
  readonly milliseconds: number;
}

function child(from: number, count: number): ChildProcess {
  const entry = ["src/cli/start.cjs", "tests/robustness/fuzz.ts"];
  const asked = [`--files=${count}`, `--files-from=${from}`];
  return spawn(process.execPath, [...entry, ...asked], { stdio: ["ignore", "pipe", "inherit"] });
}

/** Opens files in a process of their own until all are told or one takes too long or ends the process. */
async function until(from: number, count: number): Promise<Told[]> {
  const opening = child(from, count);
  const told: Told[] = [];
  let last = Date.now();
  let timer: NodeJS.Timeout | undefined;
  const wait = () => {
    clearTimeout(timer);
    timer = setTimeout(() => opening.kill("SIGKILL"), MOST_MS);
  };
  wait();
  for await (const line of createInterface({ input: opening.stdout as NodeJS.ReadableStream })) {
    told.push({ ...(JSON.parse(line) as Opened), milliseconds: Date.now() - last });
    last = Date.now();
    wait();
  }
  clearTimeout(timer);
  return told;
}

function report(told: readonly Told[], seed: number): void {
  const [slowest] = [...told].sort((one, other) => other.milliseconds - one.milliseconds);
  const count = (outcome: string) => told.filter((one) => one.outcome.startsWith(outcome)).length;
  for (const { file, outcome } of told)
    if (/^(?:fault|hang)/.test(outcome)) console.log(`seed ${file}: ${outcome}`);
  console.log(
    `seed ${seed}: ${count("opened")} opened, ${count("refused")} refused with a sentence, ${count("fault")} faults, ` +
      `${count("hang")} hangs; slowest ${slowest?.milliseconds} ms (seed ${slowest?.file}), ` +
      `largest memory ${Math.round(Math.max(...told.map(({ kilobytes }) => kilobytes)) / 1024)} MB`,
  );
  if (count("fault") + count("hang") > 0) process.exitCode = 1;
}

/** Opens so many workbooks of damaged structure, each within a minute or counted as one that hangs. */
export async function fuzzFiles(count: number, seed: number): Promise<void> {
  const told: Told[] = [];
  while (told.length < count) {
    const from = seed + told.length;
    const found = await until(from, count - told.length);
    told.push(...found);
    if (told.length < count)
      told.push({
        file: from + found.length,
        outcome: "hang or end of the process",
        kilobytes: 0,
        milliseconds: MOST_MS,
      });
    console.log(`${told.length} of ${count}`);
  }
  report(told, seed);
}
