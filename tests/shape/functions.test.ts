import { describe, expect, it } from "vitest";
import { Refusal } from "../../src/core/refusal";
import * as blade from "../../src/functions/blade";
import type { Example, WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";
import * as hardening from "../../src/functions/hardening/quenches";
import * as run from "../../src/functions/run";
import * as shape from "../../src/functions/shape";

const { MASS, SECTION_AREA, STATIONS } = shape;
const { ASSESS, BAND, USES } = blade;

/** Cells with refusals written as "code sentence". */
function answer(fn: WorksheetFunction, ...given: unknown[]) {
  return evaluate(fn, given).map((row) =>
    row.map((cell) => (cell instanceof Refusal ? `${cell.code} ${cell.message}` : cell)),
  );
}

function first(fn: WorksheetFunction, ...given: unknown[]) {
  return answer(fn, ...given)[0]?.[0];
}

function expectedRows({ gives, within = 0 }: Example): unknown[][] {
  const list = Array.isArray(gives) ? gives : [gives];
  const rows = Array.isArray(list[0]) ? (list as unknown[][]) : [list as unknown[]];
  const matcher = (cell: unknown) => {
    if (cell === "…") return expect.any(String);
    return typeof cell === "number" && within > 0 ? expect.closeTo(cell, -Math.log10(2 * within)) : cell;
  };
  return rows.map((row) => row.map(matcher));
}

const column = (...cells: unknown[]) => cells.map((cell) => [cell]);

describe("examples of the declarations", () => {
  const functions = [shape, blade, run, hardening].flatMap((topic) =>
    Object.values<WorksheetFunction>(topic),
  );
  const cases = functions.flatMap((fn) =>
    examplesOf(fn).map((example) => ({ fn, example, title: `${fn.name}(${JSON.stringify(example.given)})` })),
  );
  it.each(cases)("$title", ({ fn, example }) => {
    const given = example.given.map((argument) =>
      Array.isArray(argument) && !Array.isArray(argument[0]) ? column(...argument) : argument,
    );
    expect(evaluate(fn, given)).toEqual(expectedRows(example));
  });
});

describe("SECTION_AREA", () => {
  it("answers a column, one bad row spoiling its own cell, a blank row empty", () => {
    const grinds = column("diamond", "wedgie", null, "flat");
    expect(
      answer(SECTION_AREA, grinds, column(40, 40, null, "1.5 in"), column(6, 6, null, "1/8 in")),
    ).toEqual([
      [120],
      [expect.stringContaining('#N/A "wedgie" is not a known grind. Nearest:')],
      [""],
      // 38.1 × 3.175 / 2
      [expect.closeTo(60.48375, 10)],
    ]);
  });

  it.each<[unknown[], string]>([
    [["flat", -40, 3], "#VALUE! width: -40 mm given"],
    [["flat", "wide", 3], '#VALUE! width: "wide" is not a length'],
    [["flat", "400 °C", 3], "is not a unit of length"],
    [["flat", "3/16", 3], "is a fraction without a unit"],
    [["flat", 40, 3, 5], "#VALUE! edge 5 mm is thicker than the blade, 3 mm"],
    [["part flat", 40, 3, 0.4], '#VALUE! a "part flat" section needs a bevel height'],
    [["hollow", 40, 3, 0.4, 20, 5], "#VALUE! a wheel of radius 5 mm cannot hollow"],
    [[null, 40, 3], "#VALUE! grind is empty"],
  ])("%j: %s", (given, sentence) => {
    expect(first(SECTION_AREA, ...given)).toContain(sentence);
  });
});

describe("MASS", () => {
  it("takes a steel, a density, or a density that states its unit", () => {
    const bar = [300, 40, 5, "rectangle", null, null, null];
    // 60 000 mm³ × g/cm³; densities: 7.872 (PNNL-15870 Rev. 2, 1095), brass 8.5 from memory.
    expect(first(MASS, ...bar)).toBeCloseTo(471, 9);
    expect(first(MASS, ...bar, "1095")).toBeCloseTo(60 * 7.872, 9);
    expect(first(MASS, ...bar, 8.5)).toBeCloseTo(510, 9);
    expect(first(MASS, ...bar, "8,5")).toBeCloseTo(510, 9);
    expect(first(MASS, ...bar, "8500 kg/m3")).toBeCloseTo(510, 9);
    expect(first(MASS, ...bar, "85 g/cm3")).toContain("#VALUE! density 85 given; give 2 to 25");
    expect(first(MASS, ...bar, "1.2842")).toBeGreaterThan(460);
    expect(first(MASS, ...bar, "unobtainium")).toContain("#N/A");
  });

  it("keeps the section's character to the tip", () => {
    // Part flat, the bevel a constant share (half) of the width: area = w (3t + e) / 4, integrated by hand:
    // w 40 → 4, t 4 → 1, e 0.4 over 200 mm: 0.25 × 200 × (3 (2·160 + 40 + 16 + 2·4) / 6 + 0.4 (40 + 4) / 2) = 10 040 mm³.
    expect(first(MASS, 200, 40, 4, "part flat", 4, 1, 0.4, 10, 20)).toBeCloseTo(100.4, 9);
  });

  it("does not guess what a 0 at the tip means", () => {
    expect(first(MASS, 200, 40, 4, "flat", 0)).toContain("for a point give 0.1 mm");
    expect(first(MASS, 200, 40, 4, "flat", null, 0)).toContain("tip thickness: 0 mm given");
  });

  it("says where along the blade a section cannot be", () => {
    expect(first(MASS, 200, 40, 4, "flat", 4, 0.2, 0.4)).toContain(
      "#VALUE! at 200 mm: edge 0.4 mm is thicker",
    );
    expect(first(MASS, 200, 40, 4, "hexagonal")).toContain('a "hexagonal" section needs a flat width');
  });
});

describe("STATIONS", () => {
  const x = column(0, 70, 150, 210);
  const width = column(48, 46, 34, 2);
  const thickness = column(2.6, 2.3, 1.7, 0.9);
  const edge = column(0.25, 0.25, 0.22, 0.2);

  it("reads a knife from a column, empty rows below it included", () => {
    // Panels by hand, prismatoid rule: 4443.25 + 3601.20 + 881.00 mm³; 70.065 g at 7.85.
    const padded = (list: unknown[][]) => [...list, [null], [null]];
    const [row] = answer(STATIONS, padded(x), padded(width), padded(thickness), null, padded(edge));
    expect(row?.[0]).toBeCloseTo(8925.45, 8);
    expect(row?.[1]).toBeCloseTo(70.065, 3);
    expect(row?.[2]).toBeCloseTo(76.513, 3);
  });

  it("reads a blade a row from a matrix", () => {
    const rows = answer(
      STATIONS,
      [[0, 800]],
      [
        [50, 20],
        [50, 20],
      ],
      [
        [6, 3],
        [-6, 3],
      ],
      "diamond",
    );
    expect(rows[0]?.[0]).toBeCloseTo(66_000, 8);
    expect(rows[1]?.[0]).toContain("#VALUE! station 1: thickness: -6 mm given");
    expect(rows[1]).toHaveLength(4);
  });

  it("takes a fuller that runs out before the point", () => {
    // Lens 45 × 5.5 with a fuller 14 × 1.2 each side along the whole bar: 138.0571 mm² × 500 mm.
    const [row] = answer(STATIONS, column(0, 500), 45, 5.5, "lenticular", null, null, null, null, 14, 1.2);
    expect((row?.[0] as number) / 500).toBeCloseTo(138.0571, 4);
    const runOut = answer(
      STATIONS,
      column(0, 500),
      45,
      5.5,
      "lenticular",
      null,
      null,
      null,
      null,
      column(14, 0),
      column(1.2, 0),
    );
    expect(runOut[0]?.[0]).toBeGreaterThan(138.0571 * 500);
    expect(runOut[0]?.[0]).toBeLessThan(165.4919 * 500);
  });

  it("refuses stations out of order", () => {
    expect(first(STATIONS, column(0, 0), 45, 5)).toContain("station 2 at 0 mm does not lie beyond station 1");
    expect(first(STATIONS, 100, 45, 5)).toContain("a blade needs at least 2");
  });
});

describe("BAND, USES and ASSESS", () => {
  it("give a row an input, an unknown use spoiling its own row only", () => {
    const [good, bad, blank] = answer(BAND, column("gyuto", "spoon", ""));
    expect(good?.slice(0, 4)).toEqual([59, 60, 62, "edge"]);
    expect(bad?.[0]).toContain('#N/A "spoon" is not a known use');
    expect(bad?.[3]).toBe("");
    expect(blank).toEqual(Array(10).fill(""));
  });

  it("list every use that BAND accepts", () => {
    const uses = answer(USES);
    expect(uses).toHaveLength(37);
    for (const [low] of answer(BAND, uses)) expect(low).toEqual(expect.any(Number));
    expect(first(USES, "spoon")).toContain('#N/A no use holds "spoon"');
  });

  it("judge a column of blades, texts converted", () => {
    const rows = answer(
      ASSESS,
      column("European sword sharp", "European sword sharp", "sword", ""),
      column("5160", "440C", "5160", ""),
      column(52, "52 HRC", 52, ""),
      null,
      column(800, "32 in", 800, ""),
    );
    expect(rows[0]?.[0]).toBe("inside");
    expect(rows[1]?.[3]).toContain("poor choice for a long blade");
    expect(rows[2]?.[1]).toContain('#N/A "sword" fits more than one use');
    expect(rows[3]).toEqual(["", "", "", ""]);
  });

  it.each<[unknown[], string]>([
    [["European sword sharp", null, 52], "put the grade in quotes"],
    [["European sword sharp", "5160", 520], "HRC or low: 520 HRC given"],
    [["European sword sharp", "5160", 54, 50], "give the low end first"],
    [["European sword sharp", "5160", 52, null, null, "oil"], "fits more than one quench"],
    [["European sword sharp", "5160", 52, null, null, null, 1200], "temper C: 1200 °C (2192 °F) given"],
    [["European sword sharp", "5160", "58-60", 61], "58 to 60 HRC and high 61 HRC: give the high end once"],
    [["European sword sharp", "5160", null, 54], "HRC or low is empty and high is 54 HRC: give both ends"],
  ])("%j: %s", (given, sentence) => {
    const [[status, chance] = []] = answer(ASSESS, ...given);
    expect(status).toBe("");
    expect(chance).toContain(sentence);
  });
});

describe("ASSESS without a single reading", () => {
  const status = (...given: unknown[]) => answer(ASSESS, ...given)[0]?.[0];

  it("reads a span in one cell as it reads both ends", () => {
    const ends = answer(ASSESS, "European sword sharp", "5160", 51, 53);
    for (const span of ["51-53", "51 to 53 HRC", "52 ±1"])
      expect(answer(ASSESS, "European sword sharp", "5160", span), span).toEqual(ends);
    expect(answer(ASSESS, "European sword sharp", "5160", "52 HRC")).toEqual(
      answer(ASSESS, "European sword sharp", "5160", 52),
    );
  });

  it("judges what the temper is expected to give, and knows nothing without one", () => {
    // 5160 after 2 h near 370 °C reads about 51 HRC, after 200 °C near 60 (published curves of 5160).
    expect(status("European sword sharp", "5160", null, null, null, null, 376)).toBe("likely inside");
    expect(status("European sword sharp", "5160", null, null, null, null, 200)).toBe("too hard");
    expect(answer(ASSESS, "European sword sharp", "5160")[0]?.slice(0, 3)).toEqual([
      "not known",
      "",
      "Read the blade, or give its temper: nothing else tells its hardness.",
    ]);
    expect(status("European sword sharp", "1018")).toBe("does not harden");
    expect(status("Straight razor", "1045")).toBe("out of reach");
  });

  it("asks whether a bare 400 was °F where that suits the use, and not where the unit stands", () => {
    const cautions = (use: string, temper: unknown) =>
      String(answer(ASSESS, use, "1095", null, null, null, null, temper)[0]?.[3]);
    const asked = '400 taken as 400 °C (752 °F); write "400F" if °F was meant (204 °C (400 °F)).';
    expect(cautions("Chef knife thin hard", 400)).toContain(asked);
    for (const temper of ["400 °C", "752F", "400F", 204]) {
      expect(cautions("Chef knife thin hard", temper)).not.toContain("if °F was meant");
    }
    // A throwing knife of 44 to 50 HRC is tempered near 400 °C.
    expect(cautions("Throwing knife", 400)).not.toContain("if °F was meant");
  });
});

describe("STARTS", () => {
  it.each<[unknown[], unknown]>([
    [[24, "92 %"], 28],
    [[24, 92], expect.stringContaining("was 0.92 meant?")],
    [[24, 0.92, 90], expect.stringContaining("was 0.9 meant?")],
    [[2.5, 0.92], expect.stringContaining("#VALUE! good: 2.5 given")],
    [[24, 0.92, 1], expect.stringContaining("no number of starts makes it certain")],
    [["a dozen", 0.92], expect.stringContaining("#VALUE!")],
  ])("%j", (given, expected) => {
    expect(first(run.STARTS, ...given)).toEqual(expected);
  });

  it("broadcasts a column against a row", () => {
    // Smallest counts by exact fractions; see starts-needed.json.
    expect(answer(run.STARTS, column(10, 24), [[0.95, 0.9]])).toEqual([
      [12, 13],
      [27, 29],
    ]);
  });
});

describe("word lists", () => {
  it("hold words that the functions accept", () => {
    const grinds = answer(shape.GRINDS).flat();
    expect(grinds).toHaveLength(10);
    for (const quench of answer(hardening.QUENCHES).flat()) {
      const isAir = ["still air", "fan air", "plates", "gas"].includes(String(quench));
      expect(first(ASSESS, "Field camp bushcraft", "1095", 58, null, null, quench)).toBe(
        isAir ? "does not harden" : "inside",
      );
    }
  });
});
