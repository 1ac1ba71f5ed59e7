import { describe, expect, it } from "vitest";
import { functionNamed } from "../../src/functions/catalogue";
import { evaluate } from "../../src/functions/evaluate";
import { listedWords } from "../../src/workbook/sheets/parts/listed-words";
import { planningLines } from "../../src/workbook/sheets/planning-template";
import { Stations } from "../../src/workbook/sheets/stations-sheet";
import { EMPTY_DATA } from "../../src/workbook/sheets/template-data";

// Which figures a section needs follows from its outline: a hollow one needs its wheel, a hexagonal one its flat.

const ALL = listedWords("GRINDS");
const lines = planningLines(EMPTY_DATA, 2);

function answersOf(name: string, given: readonly unknown[]): unknown {
  const fn = functionNamed(name);
  if (fn === undefined) throw new RangeError(`no function ${name}`);
  return evaluate(fn, given as never)[0]?.[0];
}

/** A bar has no edge to be thick behind. */
const behindEdge = (word: string) => (word === "rectangle" ? 0 : 0.5);

/** Volume of a blade measured at two places, with no more than the sheet Stations has columns for. */
const measured = (word: string) =>
  answersOf("STATIONS", [
    [[0], [200]],
    [[30], [24]],
    [[4], [3]],
    word,
    [[behindEdge(word)], [behindEdge(word)]],
    "1095",
  ]);

/** Bevel height, radius or bulge, width of flat or rib, height of the rib, in mm. */
const NEEDED: Readonly<Record<string, readonly (number | null)[]>> = {
  "part flat": [20],
  chisel: [20],
  hollow: [20, 100],
  convex: [20, 0.2],
  hexagonal: [null, null, 8],
  "t-back": [20, null, 9, 5],
};

describe("sections that a drop-down offers", () => {
  const lists = new Stations(EMPTY_DATA, lines, 1).model().wordLists;
  const offered = lists.find(({ words }) => words.includes("flat"))?.words ?? [];

  it("on Stations are those that its columns describe, all of them", () => {
    const answered = ALL.filter((word) => typeof measured(word) === "number");
    expect([...offered].sort()).toEqual(answered.sort());
    expect(answered.length).toBeGreaterThan(4);
  });

  it.each(ALL)("on Lines have the columns that %s needs", (word) => {
    const headings = (lines.model().rows[3] ?? []).map((cell) => String(cell?.content));
    for (const heading of ["Bevel height mm", "Radius or bulge mm", "Flat or rib width mm", "Rib height mm"])
      expect(headings).toContain(heading);
    const [bevel, curve, flat, rib] = NEEDED[word] ?? [];
    const sizes = [200, 30, 4, word, 24, 3, behindEdge(word)];
    const mass = Number(answersOf("MASS", [...sizes, "1095", bevel, curve, flat, rib]));
    // Between a third of the bar around it and the bar, of 7.85 g/cm³; a rib stands out of it by 45 mm² at most.
    const bar = 200 * 27 * 3.5 * 0.00785;
    expect(mass).toBeGreaterThan(bar / 3);
    expect(mass).toBeLessThan(bar * 1.01 + 200 * 45 * 0.00785);
  });
});
