import { describe, expect, it } from "vitest";
import { USES } from "../../src/core/blade/bands";
import { MAX_WORDS, wordCount } from "../../src/core/cell-text";
import { QUENCH_MEDIA } from "../../src/core/hardening/quench-media";
import { Refusal } from "../../src/core/refusal";
import { catalogue, functionNamed } from "../../src/functions/catalogue";
import { evaluate } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";
import { COMMON_STEELS } from "../steel/common-steels";

/** Lists of everything that is known, in which each cell is a record and not a sentence. */
const RECORDS: readonly string[] = ["EVIDENCE"];

interface Long {
  readonly call: string;
  readonly words: number;
  readonly text: string;
}

function longCells(name: string, given: readonly unknown[]): Long[] {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`no function ${name}`);
  const columns = fn.shape === "scalar" ? [fn.result] : fn.result;
  const texts = evaluate(fn, given).flatMap((row) =>
    row.flatMap((cell, at) => {
      if (cell instanceof Refusal) return [cell.message];
      // A list of cautions holds several sentences: each of them is read by itself.
      return columns[at]?.label === "cautions"
        ? String(cell).split(/(?<=\.) (?=\p{Lu}|\d)/u)
        : [String(cell)];
    }),
  );
  return texts
    .map((text) => ({ call: `${name}(${JSON.stringify(given)})`, words: wordCount(text), text }))
    .filter(({ words }) => words > MAX_WORDS);
}

/** A line of a run in words of RUN_PLAN's headings. */
const runTable = (blades: readonly (readonly unknown[])[]) => [
  ["line", "use", "steel", "good", "yield", "length", "thickness", "quench"],
  ...blades,
];

/** The longest of each function, to read where the test fails. */
function worst(found: readonly Long[]): string[] {
  const byName = new Map<string, Long>();
  for (const each of found) {
    const name = each.call.split("(")[0] ?? "";
    if (each.words > (byName.get(name)?.words ?? 0)) byName.set(name, each);
  }
  return [...byName.values()].map(({ call, words, text }) => `${words} words: ${call}: ${text}`);
}

const STEELS = [...COMMON_STEELS, "1018", "304", "M42", "L2", "C 0.95 Mn 0.40", "W1"];
const BATHS = QUENCH_MEDIA.map(({ word }) => word);

/** Blades in turn: every use with every steel once, quench, size, temper and reading in turn with them. */
const BLADES = USES.flatMap(({ word: use }, u) =>
  STEELS.map((steel, s) => {
    const at = u * STEELS.length + s;
    return {
      use,
      steel,
      quench: BATHS[at % BATHS.length],
      thickness: [1.5, 3, 6, 12][at % 4],
      length: [120, 300, 800][at % 3],
      temperC: [150, 200, 300, 400, 520][at % 5],
      hrc: [44, 50, 54, 58, 62, 66][at % 6],
    };
  }),
);

describe(`no text in a cell, and no sentence of a list of cautions, is longer than ${MAX_WORDS} words`, () => {
  it("in the worked cases of every function", () => {
    const found = catalogue
      .filter(({ name }) => !RECORDS.includes(name))
      .flatMap((fn) => examplesOf(fn).flatMap(({ given }) => longCells(fn.name, given)));
    expect(worst(found)).toEqual([]);
  });

  it("for blades of every use and steel, in every quench and status", () => {
    const found = BLADES.flatMap(({ use, steel, quench, thickness, length, temperC, hrc }) => [
      ...longCells("ASSESS", [use, steel, hrc, null, length, quench, null, thickness]),
      ...longCells("ASSESS", [use, steel, null, null, length, quench, temperC, thickness]),
      ...longCells("BAND_TEMPER", [use, steel, length, thickness, quench]),
      ...longCells("TEMPER_PLAN", [steel, hrc]),
      ...longCells("TEMPERED_RANGE", [steel, temperC, 2, 1, null, null, null, thickness, quench]),
      ...longCells("RETEMPER", [steel, temperC, 2, hrc, (hrc ?? 0) - 2]),
      ...longCells("RECIPE", [steel, hrc, quench]),
      ...longCells("TREATMENT", [steel, use, null, quench, thickness, length]),
      ...longCells("TREATMENT", [steel, use, hrc, quench, thickness, length]),
      ...longCells("MAX_SECTION", [steel, quench]),
      ...longCells("STEEL_TRAITS", [steel]),
    ]);
    expect(worst(found)).toEqual([]);
  }, 300_000);

  it("in the plan of a run", () => {
    const lines = BLADES.filter((_, at) => at % 23 === 0).map(
      ({ use, steel, length, thickness, quench }, at) => [
        `L${at}`,
        use,
        steel,
        2,
        0.8,
        length,
        thickness,
        quench,
      ],
    );
    expect(worst(longCells("RUN_PLAN", [runTable(lines)]))).toEqual([]);
  }, 300_000);

  it("in the lists of steels for every use", () => {
    const found = USES.flatMap(({ word }, at) =>
      longCells("STEELS_FOR", [
        word,
        4,
        BATHS[at % BATHS.length],
        300,
        null,
        null,
        null,
        400,
        at % 3 ? null : "no",
      ]),
    );
    expect(worst(found)).toEqual([]);
  }, 300_000);
});
