import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { scripts } from "../../package.json";

// The other tests call the commands in their own process. Here each starts as a smith starts it.

const root = new URL("../..", import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), "commands-"));
const plan = join(folder, "plan.xlsx");
const copy = join(folder, "copy.xlsx");

afterAll(() => rmSync(folder, { recursive: true, force: true }));

it.each([
  ["calc", ['=BLADE.CARBON("1095")'], "", 0, /^0\.95\n$/],
  ["calc", ["--json", "-"], "=1+1\n", 0, /"value":2/],
  ["template", ["--lines", "2", "-o", plan], "", 0, /sheets and the lists/],
  ["recalc", ["--check", plan], "", 0, /0 values would change/],
  ["share", ["--all", "-o", copy, plan], "", 0, /SHA-256 [0-9a-f]{64}/],
  ["verify", [plan, copy], "", 0, /none differs/],
])(
  "npm run %s %j",
  (name, args, input, status, words) => {
    expect(Object.keys(scripts)).toContain(name);
    const done = spawnSync("npm", ["run", "-s", name, "--", ...args], { cwd: root, input, encoding: "utf8" });
    expect(done).toMatchObject({
      status,
      stderr: expect.not.stringContaining("Error"),
      stdout: expect.stringMatching(words),
    });
  },
  120_000,
);
