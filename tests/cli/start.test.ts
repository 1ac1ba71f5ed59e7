import { type ChildProcess, spawn } from "node:child_process";
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";

const root = new URL("../..", import.meta.url).pathname;
let project = "";

/** A small project around the starter: its own source, the packages of this one, a cache of its own. */
beforeAll(() => {
  project = mkdtempSync(join(tmpdir(), "start-"));
  mkdirSync(join(project, "src/cli"), { recursive: true });
  mkdirSync(join(project, "node_modules"));
  for (const name of readdirSync(join(root, "node_modules"))) {
    if (!name.startsWith("."))
      symlinkSync(join(root, "node_modules", name), join(project, "node_modules", name));
  }
  for (const file of [
    "package.json",
    "package-lock.json",
    "tsconfig.json",
    "src/cli/start.cjs",
    "src/cli/bundle.cjs",
  ])
    cpSync(join(root, file), join(project, file));
  writeFileSync(join(project, "src/word.ts"), 'export const word: string = "first";\n');
  writeFileSync(
    join(project, "src/say.ts"),
    'import { word } from "./word";\nprocess.stdout.write([word, ...process.argv.slice(2)].join(" "));\n',
  );
});

afterAll(() => {
  rmSync(project, { recursive: true, force: true });
});

function output(child: ChildProcess): Promise<string> {
  return new Promise((resolve) => {
    let said = "";
    child.stdout?.on("data", (chunk: Buffer) => {
      said += chunk.toString();
    });
    child.stderr?.on("data", (chunk: Buffer) => {
      said += chunk.toString();
    });
    child.on("close", () => resolve(said));
  });
}

const say = (...args: string[]) =>
  output(spawn(process.execPath, ["src/cli/start.cjs", "src/say.ts", ...args], { cwd: project }));

it("builds on first use, in silence, whichever of two processes comes first", async () => {
  expect(await Promise.all([say("a"), say("b")])).toEqual(["first a", "first b"]);
}, 120_000);

it("builds again once a source has changed, and only then", async () => {
  const cache = join(project, "node_modules/.cache/blade-metallurgy/cli");
  const bundles = () => readdirSync(cache).filter((name) => name.startsWith("src-say."));
  const before = bundles();
  expect(await say("c")).toBe("first c");
  expect(bundles()).toEqual(before);
  const word = join(project, "src/word.ts");
  writeFileSync(word, 'export const word: string = "second";\n');
  utimesSync(word, new Date(0), new Date(0));
  expect(await say("d")).toBe("second d");
}, 120_000);

it("leaves nothing half done in the cache", () => {
  const cache = join(project, "node_modules/.cache/blade-metallurgy/cli");
  expect(readdirSync(cache).filter((name) => !/^src-say\.(json|[0-9a-f]{16})$/.test(name))).toEqual([]);
});

it("in a copy of the project runs the code of the copy, with the cache copied too", async () => {
  const copy = mkdtempSync(join(tmpdir(), "copy-"));
  try {
    cpSync(project, copy, { recursive: true, verbatimSymlinks: true, preserveTimestamps: true });
    writeFileSync(join(project, "src/word.ts"), 'export const word: string = "original";\n');
    await say();
    const inCopy = () => output(spawn(process.execPath, ["src/cli/start.cjs", "src/say.ts"], { cwd: copy }));
    expect(await inCopy()).toBe("second");
    writeFileSync(join(copy, "src/word.ts"), 'export const word: string = "copied";\n');
    expect(await inCopy()).toBe("copied");
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
}, 120_000);

it("says where a source does not compile", async () => {
  writeFileSync(join(project, "src/word.ts"), "export const word = ;\n");
  expect(await say("e")).toMatch(/word\.ts/);
}, 120_000);
