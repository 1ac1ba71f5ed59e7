import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import manifest from "../../package.json";
import * as core from "../../src/core";
import { launch } from "../browser";

// The question of README's first formula; the answer is the library's own, compared with the sources. 0.95 % is the
// middle that the designation 1095 states (SAE J402: the last digits are hundredths of a per cent).

const ROOT = new URL("../..", import.meta.url).pathname;
const TSC = join(ROOT, "node_modules/typescript/bin/tsc");
const bare = mkdtempSync(join(tmpdir(), "bare-project-"));

const run = (command: string, args: readonly string[], cwd = bare) =>
  execFileSync(command, args, { cwd, encoding: "utf8" });

interface Packed {
  readonly filename: string;
  readonly files: readonly { readonly path: string }[];
}

let packed: Packed;

beforeAll(() => {
  run("npm", ["run", "-s", "build:library"], ROOT);
  [packed] = JSON.parse(run("npm", ["pack", "--json", "--pack-destination", bare], ROOT)) as [Packed];
  writeFileSync(join(bare, "package.json"), '{ "name": "bare", "version": "1.0.0" }');
  run("npm", ["install", "--offline", "--no-audit", "--no-fund", `./${packed.filename}`]);
}, 240_000);

afterAll(() => rmSync(bare, { recursive: true, force: true }));

test("the package holds the library with its declarations, and nothing of the pages or the tests", () => {
  const tops = new Set(packed.files.map(({ path }) => path.split("/").slice(0, 2).join("/")));
  expect([...tops].sort()).toEqual(["LICENSE", "README.md", "assets/help", "dist/library", "package.json"]);
  const paths = packed.files.map(({ path }) => path);
  for (const { types, default: script } of [manifest.exports["."], manifest.exports["./functions"]]) {
    expect(paths).toContain(types.slice(2));
    expect(paths).toContain(script.slice(2));
  }
});

describe("in a bare Node project", () => {
  test("it is the only package", () => {
    expect(readdirSync(join(bare, "node_modules")).filter((name) => !name.startsWith("."))).toEqual([
      manifest.name,
    ]);
    expect(Object.keys(manifest)).not.toContain("dependencies");
  });

  test("temperedHardness is imported by its name and answers as the sources do", () => {
    const code = `import { findSteel, temperedHardness, carbonOf } from "blade-metallurgy";
import { functionNamed, evaluate } from "blade-metallurgy/functions";
const steel = findSteel("1095");
console.log(JSON.stringify([carbonOf(steel), temperedHardness(steel, 205, { hours: 2, cycles: 1 }), evaluate(functionNamed("CARBON"), ["1095"])]));`;
    writeFileSync(join(bare, "ask.mjs"), code);
    const steel = core.findSteel("1095");
    const expected = [0.95, core.temperedHardness(steel, 205, { hours: 2, cycles: 1 }), [[0.95]]];
    expect(JSON.parse(run(process.execPath, ["ask.mjs"]))).toEqual(expected);
  });

  test("everything that core shows can be imported", () => {
    const code = 'import * as all from "blade-metallurgy"; console.log(Object.keys(all).sort().join());';
    writeFileSync(join(bare, "all.mjs"), code);
    expect(run(process.execPath, ["all.mjs"]).trim()).toBe(Object.keys(core).sort().join());
  });

  test("its types are read by the strictest module resolution", () => {
    const code = `import { findSteel, temperedHardness, NotAvailable } from "blade-metallurgy";
const hardness: number = temperedHardness(findSteel("1095"), 205, { hours: 2, cycles: 1 });
// @ts-expect-error a temper is a number of °C
temperedHardness("1095", "205", { hours: 2, cycles: 1 });
export { hardness, NotAvailable };`;
    writeFileSync(join(bare, "typed.mts"), code);
    const args = [TSC, "--noEmit", "--strict", "--target", "es2022", "--module", "nodenext", "typed.mts"];
    const { status, stdout } = spawnSync(process.execPath, args, { cwd: bare, encoding: "utf8" });
    expect({ status, stdout }).toEqual({ status: 0, stdout: "" });
  }, 120_000);
});

test("a page in a browser imports it as it is", async () => {
  const library = join(bare, "node_modules", manifest.name, "dist/library");
  const server = createServer((request, response) => {
    const isPage = request.url === "/";
    response.setHeader("Content-Type", isPage ? "text/html" : "text/javascript");
    response.end(
      isPage ? "<!doctype html><title>page</title>" : readFileSync(join(library, String(request.url))),
    );
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const browser = await launch();
  try {
    const page = await browser.newPage();
    await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
    const answer = await page.evaluate(`import("/index.js").then(({ findSteel, temperedHardness }) =>
      temperedHardness(findSteel("1095"), 205, { hours: 2, cycles: 1 }))`);
    expect(answer).toBeCloseTo(
      core.temperedHardness(core.findSteel("1095"), 205, { hours: 2, cycles: 1 }),
      9,
    );
  } finally {
    await browser.close();
    server.close();
  }
}, 60_000);
