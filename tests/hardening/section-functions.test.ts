import { describe, expect, it } from "vitest";
import { Refusal } from "../../src/core/refusal";
import type { WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { JOMINY, SECTION_FIT, SECTION_PROFILE, SECTION_QUENCH } from "../../src/functions/hardening";

/** Cells with refusals written as "code sentence". */
function answer(fn: WorksheetFunction, ...given: unknown[]) {
  return evaluate(fn, given).map((row) =>
    row.map((cell) => (cell instanceof Refusal ? `${cell.code} ${cell.message}` : cell)),
  );
}

const CLAYED = ["1075", 30, 7, 1.5, "agitated water", 0.0016, 8, 0.0002];

describe("SECTION_QUENCH", () => {
  it("answers a row a blade, one bad row spoiling itself only", () => {
    const [good, bad, last] = answer(SECTION_QUENCH, "1084", 30, [[4], [0.45], [3]], 0.5, "fast oil");
    expect(good).toEqual([30, 66, 66, 66, expect.stringMatching(/^hardens through/)]);
    expect(bad?.[0]).toContain("#VALUE! edge 0.5 mm is thicker than spine 0.45 mm");
    expect(bad?.[4]).toBe("");
    expect(last?.[4]).toMatch(/^hardens through/);
  });

  it("gives bands in the transition zone and the caution on clay", () => {
    const [row = []] = answer(SECTION_QUENCH, ...CLAYED);
    expect(row[1]).toBe(66);
    expect(row[2]).toMatch(/ to /);
    expect(row[4]).toMatch(/^does not harden through: hard from the edge to between \d+ mm and \d+ mm/);
    expect(row[4]).toContain("no clay value is published: measure one blade and fit it with SECTION_FIT");
  });

  it("tells of an edge that cools on the way, in both scales", () => {
    const [row = []] = answer(SECTION_QUENCH, "1095", 30, 4, 0.5, "fast oil", null, null, null, 5);
    expect(row[4]).toMatch(
      /the edge falls to \d+ °C \(\d+ °F\) on the way to the bath, under 727 °C \(1341 °F\)/,
    );
  });

  // Water for plain carbon steel, with losses; oil for spring steel: common practice, no source.
  it.each([
    ["1095", "agitated water", /^hardens through\. Agitated water cracks some blades of 1095/],
    ["5160", "agitated water", /^hardens through\. 5160 is likely to crack in agitated water: use oil/],
    ["5160", "fast oil", /^hardens through$/],
  ])("warns of a bath too fierce: %s in %s", (steel, quench, said) => {
    expect(answer(SECTION_QUENCH, steel, 30, 4, 0.5, quench)[0]?.[4]).toMatch(said);
  });

  it("says so where nothing hardens", () => {
    expect(answer(SECTION_QUENCH, "1095", 30, 8, 8, "still air")[0]).toEqual([
      0,
      "under 20",
      "under 20",
      "under 20",
      "does not harden: it hardens nowhere; 1095 does not harden in still air: it needs oil or water",
    ]);
  });

  it("lists the baths it knows", () => {
    expect(answer(SECTION_QUENCH, "1095", 30, 4, 0.5, "polymer")[0]?.[0]).toContain(
      "a section can be worked for fast oil, oil A, slow oil, agitated water, brine, still air",
    );
    expect(answer(SECTION_QUENCH, "1095", 30, 4, 0.5, "tea")[0]?.[0]).toContain("Nearest:");
  });
});

describe("SECTION_PROFILE", () => {
  it("runs from edge to spine, low under likely under high", () => {
    const rows = answer(SECTION_PROFILE, ...CLAYED);
    expect(rows).toHaveLength(30);
    for (const row of rows) {
      const [, low = 0, likely = 0, high = 0] = row.map((cell) => (cell === "under 20" ? 19 : Number(cell)));
      expect(low).toBeLessThanOrEqual(likely);
      expect(likely).toBeLessThanOrEqual(high);
    }
  });

  it("says under 20 where the Rockwell C scale ends", () => {
    expect(answer(SECTION_PROFILE, "1095", 30, 3, 0.5, "still air").at(-1)).toEqual([
      29.5,
      "under 20",
      "under 20",
      expect.anything(),
    ]);
  });
});

describe("SECTION_FIT", () => {
  it("gives cells that SECTION_QUENCH then agrees with", () => {
    const [fitted = []] = answer(SECTION_FIT, ...CLAYED, null, null, null, 9);
    const [clay] = fitted;
    expect(Math.abs(Number(fitted[2]))).toBeLessThan(0.05);
    const again = ["1075", 30, 7, 1.5, "agitated water", clay, 8, 0.0002];
    expect(Math.abs(Number(answer(SECTION_QUENCH, ...again)[0]?.[0]) - 9)).toBeLessThan(0.05);
  });

  it("asks for the measured depth, which stands last", () => {
    expect(answer(SECTION_FIT, ...CLAYED)[0]?.[0]).toContain("#VALUE! measured depth mm is empty");
  });
});

it("JOMINY broadcasts over distances", () => {
  const [row = []] = answer(JOMINY, "4140", [[3, 20, 60]]);
  expect(Number(row[0])).toBeGreaterThan(Number(row[1]));
  expect(row[2]).toContain("#N/A distance from the quenched end 60 mm is outside 1.5 mm to 50 mm");
});
