import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { scripts, version } from "../package.json";
import { evaluateFormulas } from "../src/engine/evaluate-formulas";
import { catalogue, NAMESPACE } from "../src/functions/catalogue";

const DOCUMENTS = ["README.md", "DEVELOPERS.md", "assets/help/command-line.md"] as const;
const text = (name: string) => readFileSync(name, "utf8");

/** Formulas set apart in the text; one that reads a table needs a file beside it. */
function formulasIn(name: string): string[] {
  const found = [...text(name).matchAll(/[`'](=BLADE\.[^`'\n]+\))[`']/g)].map(([, formula = ""]) => formula);
  const inBlocks = [...text(name).matchAll(/^(=BLADE\..+?\))(?: {2,}|$)/gm)].map(
    ([, formula = ""]) => formula,
  );
  return [...found, ...inBlocks].filter((formula) => !/\bTABLE\b/.test(formula));
}

/** Commands as they are typed. */
function commandsIn(name: string): string[] {
  const found = [...text(name).matchAll(/\bnpm run (?:-s )?([a-z][\w:-]*)/g)];
  return found.map(([, script = ""]) => script);
}

/** Paths of this repository in backticks, without those with a place to fill in. */
function pathsIn(name: string): string[] {
  const found = [...text(name).matchAll(/`((?:src|tests|manifest|assets)\/[\w./-]+)`/g)];
  return found.map(([, path = ""]) => path);
}

describe.each(DOCUMENTS)("%s", (name) => {
  test("names commands that are there", () => {
    expect(commandsIn(name).length).toBeGreaterThan(5);
    for (const command of commandsIn(name)) expect(Object.keys(scripts), command).toContain(command);
  });

  test("names files that are there", () => {
    for (const path of pathsIn(name)) expect(existsSync(path), path).toBe(true);
  });

  test("names functions that are there", () => {
    const known = new Set(catalogue.map((fn) => fn.name));
    const named = [...text(name).matchAll(new RegExp(`\\b${NAMESPACE}\\.([A-Z][A-Z0-9_]+)\\b`, "g"))];
    for (const [, called = ""] of named) expect(known.has(called), called).toBe(true);
  });
});

test("every formula of README and of the page of the command line gives an answer", async () => {
  const formulas = ["README.md", "assets/help/command-line.md"].flatMap(formulasIn);
  expect(formulas.length).toBeGreaterThan(9);
  for (const { formula, rows } of await evaluateFormulas(formulas)) {
    const errors = rows.flat().filter((cell) => "error" in cell);
    expect(errors, formula).toEqual([]);
    expect(rows.flat().length, formula).toBeGreaterThan(0);
  }
});

/** Whether an answer says a figure, to as many places as it is printed with. */
function says(cells: readonly unknown[], figure: string): boolean {
  const places = figure.split(".")[1]?.length ?? 0;
  return cells.some((cell) =>
    typeof cell === "number"
      ? cell.toFixed(places) === figure
      : String(cell)
          .split(/[^\d.]+/)
          .includes(figure),
  );
}

test("the answers printed beside README's formulas are those that they give", async () => {
  const lines = [...text("README.md").matchAll(/^(=BLADE\..+?\)) {2,}(.+)$/gm)];
  expect(lines.length).toBeGreaterThan(5);
  for (const [, formula = "", words = ""] of lines) {
    const [answered] = await evaluateFormulas([formula]);
    const cells = answered?.rows.flat().map((cell) => ("value" in cell ? cell.value : "")) ?? [];
    const given: readonly string[] = formula.match(/[\d.]+/g) ?? [];
    for (const [figure] of words.matchAll(/\d+(?:\.\d+)?/g))
      expect(given.includes(figure) || says(cells, figure), `${formula}: ${figure}`).toBe(true);
  }
});

test("the page of changes tells what changed in this version", () => {
  expect(text("assets/help/changes.md")).toContain(`${version}:`);
});

test("README leads only to files that are there, and to the pages that stand apart", () => {
  const links = [...text("README.md").matchAll(/\]\(([^)#:]+)\)/g)].map(([, to = ""]) => to);
  for (const to of links) expect(existsSync(to), to).toBe(true);
  for (const page of ["functions", "accuracy", "changes"]) expect(links).toContain(`assets/help/${page}.md`);
});

const MAX_LETTERS_A_LINE = 120;
const MAX_README_BYTES = 12 * 1024;

test.each(DOCUMENTS)("%s has no line over 120 letters outside tables", (name) => {
  const long = text(name)
    .split("\n")
    .filter((line) => !line.startsWith("|") && line.length > MAX_LETTERS_A_LINE);
  expect(long).toEqual([]);
});

test("README stays short enough to be read at once", () => {
  expect(Buffer.byteLength(text("README.md"))).toBeLessThanOrEqual(MAX_README_BYTES);
});
