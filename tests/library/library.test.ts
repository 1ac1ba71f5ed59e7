import { execFileSync, spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { rolldown } from "rolldown";
import ts from "typescript";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import manifest from "../../package.json";
import * as core from "../../src/core";
import * as worksheet from "../../src/functions";
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
  const pack = ["pack", "--json", "--pack-destination", bare, "./dist/library"];
  [packed] = JSON.parse(run("npm", pack, ROOT)) as [Packed];
  writeFileSync(join(bare, "package.json"), '{ "name": "bare", "version": "1.0.0" }');
  run("npm", ["install", "--offline", "--no-audit", "--no-fund", `./${packed.filename}`]);
}, 240_000);

afterAll(() => rmSync(bare, { recursive: true, force: true }));

const LIBRARY = join(ROOT, "dist/library");
const packedTexts = (ending: RegExp) =>
  packed.files
    .filter(({ path }) => ending.test(path))
    .map(({ path }) => ({ path, text: readFileSync(join(LIBRARY, path), "utf8") }));

describe("the package", () => {
  test("holds the library with its declarations, and nothing of the pages or the tests", () => {
    const tops = new Set(packed.files.map(({ path }) => path.split("/")[0]));
    const pages = ["LICENSE", "NOTICE", "README.md", "accuracy.md", "functions.md", "package.json"];
    expect([...tops].filter((top) => top !== "_virtual" && top !== "package.js").sort()).toEqual(
      [...pages, "core", "data", "functions"].sort(),
    );
    const paths = packed.files.map(({ path }) => path);
    for (const { types, default: script } of [manifest.exports["."], manifest.exports["./functions"]]) {
      expect(paths).toContain(types.slice("./dist/library/".length));
      expect(paths).toContain(script.slice("./dist/library/".length));
    }
  });

  test("has a manifest of its own, without scripts and tools", () => {
    const own = JSON.parse(readFileSync(join(LIBRARY, "package.json"), "utf8"));
    expect(own).toMatchObject({
      name: manifest.name,
      version: manifest.version,
      type: "module",
      sideEffects: false,
    });
    for (const key of ["private", "scripts", "devDependencies", "dependencies"])
      expect(own).not.toHaveProperty(key);
    expect(readFileSync(join(LIBRARY, "NOTICE"), "utf8")).toContain("creativecommons.org/licenses/by/4.0");
  });

  test("holds every page that its pages link", () => {
    const links = packedTexts(/\.md$/).flatMap(({ text }) =>
      [...text.matchAll(/\]\((?!https?:)([^)#]+)/g)].map(([, to = ""]) => to),
    );
    expect(links.length).toBeGreaterThan(1);
    expect(links.filter((to) => !packed.files.some(({ path }) => path === to))).toEqual([]);
  });

  test("holds no declaration that its entries do not lead to", () => {
    const texts = packedTexts(/\.d\.ts$/);
    const imported = new Set(
      texts.flatMap(({ path, text }) =>
        [...text.matchAll(/(?:from |import\()"(\.[^"]+)\.js"/g)].map(([, to = ""]) =>
          join(path, "..", `${to}.d.ts`),
        ),
      ),
    );
    const entries = ["core/index.d.ts", "functions/index.d.ts"];
    expect(
      texts.map(({ path }) => path).filter((path) => !imported.has(path) && !entries.includes(path)),
    ).toEqual([]);
  });

  test("links in its declarations lead somewhere", () => {
    const program = ts.createProgram(
      packedTexts(/\.d\.ts$/).map(({ path }) => join(LIBRARY, path)),
      { module: ts.ModuleKind.NodeNext, target: ts.ScriptTarget.ES2022 },
    );
    const checker = program.getTypeChecker();
    let links = 0;
    const lost: string[] = [];
    const look = (node: ts.Node): void => {
      for (const link of ts.getJSDocCommentsAndTags(node).flatMap(linksOf)) {
        links += 1;
        if (!link.name || !checker.getSymbolAtLocation(link.name)) lost.push(link.getText());
      }
      ts.forEachChild(node, look);
    };
    for (const file of program.getSourceFiles()) if (file.fileName.startsWith(LIBRARY)) look(file);
    expect(links).toBeGreaterThan(100);
    expect(lost).toEqual([]);
  });
});

function linksOf(comment: ts.JSDoc | ts.JSDocTag): ts.JSDocLink[] {
  const own = typeof comment.comment === "object" ? comment.comment.filter(ts.isJSDocLink) : [];
  return ts.isJSDoc(comment) ? [...own, ...(comment.tags ?? []).flatMap(linksOf)] : own;
}

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

  test("the five tasks of its page are answered as the page of functions and README say", () => {
    cpSync(join(ROOT, "tests/library/five-tasks.mjs"), join(bare, "five-tasks.mjs"));
    const lines = run(process.execPath, ["five-tasks.mjs"]).trim().split("\n");
    // README: 65Mn at 377 °C, 59 to 64 HRC likely 62, start 28.
    expect(lines[0]).toMatch(/^65Mn: temper at 377 °C\. /);
    expect(lines[1]).toBe("59 to 64 HRC, likely 62");
    // Wedges of 30 × 3 and 10 × 2 mm, 200 apart: 5167 mm³ by the prismoid, balance 77.4 mm, worked by hand.
    expect(lines[2]).toMatch(/^40\.\d g, balance at 77\.4 mm$/);
    expect(lines[3]).toBe("start 28");
    // Nine blanks of 300 mm with their kerfs to a bar of 2990 mm: 28 need four.
    expect(lines[4]).toMatch(/^4 bars of 1095 40 × 4 mm, 15\.\d\d kg$/);
    expect(lines[5]).toMatch(/^InvalidValue: line 1, length: -300 mm given/);
  });

  test("a program that hands on every function compiles with declarations of its own", () => {
    const calls = (entry: string, names: readonly string[]) =>
      names.map(
        (name) =>
          `export const ${entry}_${name} = (...given: Parameters<typeof ${entry}.${name}>) => ${entry}.${name}(...given);`,
      );
    const named = (all: object, skip: readonly string[]) =>
      Object.entries(all).flatMap(([name, value]) =>
        typeof value === "function" && !skip.includes(name) ? [name] : [],
      );
    const code = [
      'import * as core from "blade-metallurgy";',
      'import * as functions from "blade-metallurgy/functions";',
      ...calls("core", named(core, ["attempt", "attemptOr", "Refusal", "InvalidValue", "NotAvailable"])),
      ...calls("functions", named(worksheet, [])),
    ];
    expect(code.length).toBeGreaterThan(120);
    writeFileSync(join(bare, "hands-on.mts"), code.join("\n"));
    const options = ["--declaration", "--outDir", "out", "--strict", "--exactOptionalPropertyTypes"];
    const args = [TSC, ...options, "--target", "es2022", "--module", "nodenext", "hands-on.mts"];
    const { status, stdout } = spawnSync(process.execPath, args, { cwd: bare, encoding: "utf8" });
    expect({ status, stdout }).toEqual({ status: 0, stdout: "" });
  }, 120_000);

  test("a bundler leaves out what a program does not use", async () => {
    const size = async (names: string) => {
      const input = join(bare, "use.mjs");
      writeFileSync(input, `import { ${names} } from "blade-metallurgy"; console.log(${names});`);
      const bundle = await rolldown({ input, logLevel: "silent" });
      const { output } = await bundle.generate({ format: "esm", minify: true });
      return output.reduce((sum, part) => sum + ("code" in part ? gzipSync(part.code).length : 0), 0);
    };
    // All of core is about 145 kB; before each module had a file of its own, one function took 64 kB.
    expect(await size("priceAtMargin")).toBeLessThan(1_000);
    expect(await size("sectionArea")).toBeLessThan(20_000);
    expect(await size("cutPlan")).toBeLessThan(20_000);
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
  const library = join(bare, "node_modules", manifest.name);
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
    const answer = await page.evaluate(`import("/core/index.js").then(({ findSteel, temperedHardness }) =>
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
