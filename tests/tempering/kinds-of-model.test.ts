import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { asFahrenheit, fahrenheitQuestion } from "../../src/core/tempering/fahrenheit";
import { hollomonJaffe } from "../../src/core/tempering/hollomon-jaffe";
import { temperPlan } from "../../src/core/tempering/temper-plan";
import { temperedHardness } from "../../src/core/tempering/tempered";
import { temperModel } from "../../src/core/tempering/tempering-model";
import stainlessRows from "../fitting/stainless-rows.json";
import toolSteelRows from "../fitting/tool-steel-rows.json";

/*
 * Steels without rows of their own grade: the relation of martensitic stainless steel, curves through handbook rows,
 * figures lent by near kin, and what a freezer adds. Rows as printed stand in tests/fitting.
 */

const model = (steel: string, hardenC?: number, quenchToC?: number) =>
  temperModel(findSteel(steel), hardenC, quenchToC);
const lost = (steel: string, celsius: number, hours = 1) => {
  const { curve } = model(steel, 1040);
  return curve.hrcAt(hollomonJaffe(150, 1)) - curve.hrcAt(hollomonJaffe(celsius, hours));
};

describe("martensitic stainless steel", () => {
  // 1Cr13 to 4Cr13, 1 h (handbook rows, the first source of stainless-rows.json).
  const rows = stainlessRows.rows.filter(([source]) => source === "MFGSS");
  const hrc = (analysis: string, celsius: number) =>
    rows.find(([, of, , temper]) => of === analysis && temper === celsius)?.[5] as number;
  const analyses = [...new Set(rows.map(([, analysis]) => analysis as string))].filter(
    (analysis) => Number.isFinite(hrc(analysis, 200)) && Number.isFinite(hrc(analysis, 600)),
  );

  test.each([300, 400, 500, 550, 600, 650])("softens from 200 to %d °C as 1Cr13 to 4Cr13 do", (celsius) => {
    const printed = analyses.map((analysis) => hrc(analysis, 200) - hrc(analysis, celsius));
    const known = printed.filter(Number.isFinite);
    expect(known.length).toBeGreaterThan(2);
    const mean = known.reduce((sum, one) => sum + one, 0) / known.length;
    expect(Math.abs(lost("X46Cr13", celsius) - lost("X46Cr13", 200) - mean)).toBeLessThan(1);
  });

  test("keeps its hardness up to 150 °C, then only falls, without a step", () => {
    expect([100, 125, 150].map((celsius) => lost("X46Cr13", celsius))).toEqual([0, 0, 0]);
    for (let celsius = 151; celsius <= 650; celsius += 1) {
      const fall = lost("X46Cr13", celsius) - lost("X46Cr13", celsius - 1);
      expect(fall).toBeGreaterThan(0);
      // The steepest stretch of the rows: 8 HRC over 50 °C, 500 to 600 °C.
      expect(fall).toBeLessThan(0.2);
    }
  });

  test("every grade loses the same, and runs straight between two tempers of the rows", () => {
    for (const celsius of [180, 330, 420, 530, 620])
      expect(lost("420", celsius)).toBeCloseTo(lost("X46Cr13", celsius), 9);
    const at = (parameter: number) => model("420", 1040).curve.hrcAt(parameter);
    for (const [from, to] of [
      [200, 300],
      [450, 500],
      [600, 650],
    ] as const) {
      const [a, b] = [hollomonJaffe(from, 1), hollomonJaffe(to, 1)];
      expect(at((a + b) / 2)).toBeCloseTo((at(a) + at(b)) / 2, 9);
      expect(at((3 * a + b) / 4)).toBeCloseTo((3 * at(a) + at(b)) / 4, 9);
    }
  });

  test("where its curve bends lies inside its span", () => {
    const { curve } = model("420", 1040);
    expect(curve.breaks.length).toBeGreaterThan(6);
    for (const bend of curve.breaks) {
      expect(bend).toBeGreaterThan(curve.from);
      expect(bend).toBeLessThan(curve.to);
    }
  });

  test("says what hardening it took and when it stands beyond the rows, where the band is 4 HRC", () => {
    const said = (steel: string, hardenC?: number) => {
      const { assumptions, halfWidthAt } = model(steel, hardenC);
      return [...assumptions, halfWidthAt(200, 9)];
    };
    // EN 10088-1: X46Cr13 0.43 to 0.50 % C, no nitrogen; X30CrMoN15-1 0.3 to 0.5 % N. The rows end at 0.38 % C in solution.
    expect(said("X46Cr13")).toEqual(["hardening from 1000 °C (1832 °F) taken, none was given", 2.5]);
    expect(said("X46Cr13", 1050)).toEqual([2.5]);
    expect(said("X46Cr13", 1100)).toEqual(["more carbon in solution than in any row that was read", 4]);
    expect(said("X30CrMoN15-1", 1020)).toEqual([
      "nitrogen counted as carbon, no row of a nitrogen grade was read",
      4,
    ]);
    // All of 0.38 % C dissolved at 1120 °C is as much as the rows held.
    expect(said("C 0.38 Cr 13 Mn 0.5 Si 0.5", 1120)).toEqual([2.5]);
    const { basisAt, relations, minC, maxC } = model("X46Cr13");
    expect(basisAt(9)).toContain("by relation for martensitic stainless steel");
    expect(relations.map(({ source }) => source)).toEqual(["stainless-hardness-fit"]);
    expect([minC, maxC]).toEqual([100, 650]);
  });

  test("a target beyond it names what the top of the window would give", () => {
    // Window of X46Cr13 950 to 1050 °C: by its own word at 1050 °C, tempered at 150 °C.
    const top = temperedHardness(findSteel("X46Cr13"), 150, { hours: 2, hardenC: 1050 });
    const caution = (steel: string, hardenC?: number, hrc = 62) =>
      temperPlan(findSteel(steel), hrc, { hours: 2, hardenC }).caution;
    expect(caution("X46Cr13")).toContain(
      `(hardened from 1050 °C (1922 °F), the top of its window, ${top.toFixed(1)} HRC)`,
    );
    expect(caution("X46Cr13", 1000)).not.toContain("top of its window");
    // Half a point or less is not worth the grain: 420 holds no more carbon than dissolves in the middle already.
    expect(caution("420")).not.toContain("top of its window");
    expect(caution("1084", undefined, 68)).not.toContain("top of its window");
  });
});

describe("curves through handbook rows", () => {
  test.each(["CrWMn", "60Si2Mn", "A6"])("%s stays within its band at every row", (steel) => {
    const { curve, halfWidthAt } = model(steel);
    const rows = toolSteelRows.rows.filter(([of]) => of === steel);
    expect(rows.length).toBeGreaterThan(3);
    for (const [, , celsius, hrc] of rows as [string, string, number, number][]) {
      const parameter = hollomonJaffe(celsius, 2);
      expect(Math.abs(curve.hrcAt(parameter) - hrc)).toBeLessThan(halfWidthAt(celsius, parameter));
    }
  });

  test("their relation says how far the rows reach and what the error is", () => {
    const { relations, basisAt, assumptions, minC, maxC, minHours, maxHours } = model("CrWMn");
    // Rows of 180 to 540 °C, carried down to 150 °C.
    expect([minC, maxC, minHours, maxHours, assumptions]).toEqual([150, 540, 0.5, 12, []]);
    expect(basisAt(9)).toBe("curve fitted to handbook rows of CrWMn");
    expect(relations).toHaveLength(1);
    expect(relations[0]).toMatchObject({
      title: "Hardness after temper of CrWMn",
      source: "chinese-tempering-tables",
      inputs: { temperC: { unit: "°C", min: 150, max: 540 } },
      output: { label: "hardness", unit: "HRC" },
      error: { size: 3, unit: "HRC" },
      note: expect.stringContaining("below 180 °C"),
    });
    // The first row of L6, 300 °F, lies under 150 °C.
    expect(model("L6").minC).toBe(148);
  });

  test("two sheets of one grade part above 430 °C: the band is wider there", () => {
    expect([430, 430.1].map((celsius) => model("CrWMn").halfWidthAt(celsius, 13))).toEqual([3, 4.5]);
    expect([430, 430.1].map((celsius) => model("60Si2Mn").halfWidthAt(celsius, 13))).toEqual([3.5, 4.5]);
  });
});

test("near kin lend their curve, with a wider band, and it is said", () => {
  // JIS SKD11 is kin of D2: half a point wider.
  const [kin, own] = [model("SKD11"), model("D2")];
  const parameter = hollomonJaffe(200, 2);
  expect(kin.curve.hrcAt(parameter)).toBe(own.curve.hrcAt(parameter));
  expect(kin.halfWidthAt(200, parameter) - own.halfWidthAt(200, parameter)).toBeCloseTo(0.5, 9);
  expect(kin.basisAt(parameter)).toBe(`${own.basisAt(parameter)}, lent`);
  expect(kin.assumptions).toEqual([
    ...own.assumptions,
    "figures of D2 lent to its near kin SKD11, not measured on it",
  ]);
});

describe("what a freezer added fades as the austenite would have turned anyway", () => {
  const gain = (steel: string, hardenC: number | undefined, parameter: number) =>
    model(steel, hardenC, -80).curve.hrcAt(parameter) - model(steel, hardenC).curve.hrcAt(parameter);
  const middle = (a: number, b: number) => (hollomonJaffe(a, 2) + hollomonJaffe(b, 2)) / 2;

  test.each([
    // Second stage of tempering 200 to 300 °C (Krauss, from memory); in chromium steels it turns at 450 to 550 °C.
    ["52100", undefined, 160, 200, 300, 330],
    ["X46Cr13", 1050, 160, 450, 550, 600],
  ])("%s", (steel, hardenC, cool, from, to, hot) => {
    const whole = gain(steel, hardenC, hollomonJaffe(cool, 2));
    expect(whole).toBeGreaterThan(0.05);
    expect(gain(steel, hardenC, hollomonJaffe(from, 2))).toBeCloseTo(whole, 9);
    expect(gain(steel, hardenC, middle(from, to))).toBeCloseTo(whole / 2, 9);
    expect(gain(steel, hardenC, hollomonJaffe(to, 2))).toBeCloseTo(0, 9);
    expect(gain(steel, hardenC, hollomonJaffe(hot, 2))).toBeCloseTo(0, 9);
  });

  test("the curve bends there, in order, and only inside its span", () => {
    for (const [steel, hardenC] of [
      ["52100", undefined],
      ["X46Cr13", 1050],
      ["440C", undefined],
    ] as const) {
      const { curve, assumptions } = model(steel, hardenC, -80);
      expect(curve.breaks).toEqual([...curve.breaks].sort((a, b) => a - b));
      expect(curve.breaks.every((bend) => bend > curve.from && bend < curve.to)).toBe(true);
      expect(assumptions.at(-1)).toMatch(/^cooled to -80 °C .* of austenite turned$/);
    }
    const bends = (quenchToC?: number) => model("52100", undefined, quenchToC).curve.breaks.length;
    expect(bends(-80) - bends()).toBe(2);
    expect(model("440C", undefined, -80).curve.breaks).toHaveLength(model("440C").curve.breaks.length);
  });
});

describe("a temper typed in °F", () => {
  const meant = (steel: string, figure: number) => asFahrenheit(findSteel(steel), figure, { hours: 2 });

  test("is asked about where the figure as °F is a usual temper: 400 °F is 204.4 °C", () => {
    expect(meant("1084", 400)).toBeCloseTo(204.444, 3);
    expect(meant("1084", 800)).toBeCloseTo(426.667, 3);
    expect(fahrenheitQuestion(400, meant("1084", 400) as number)).toBe(
      '400 taken as 400 °C (752 °F); write "400F" if °F was meant (204 °C (400 °F)).',
    );
  });

  test("is not where it would be no usual temper of the steel: 150 °C to the end of its rows", () => {
    // 301 °F is 149.4, 302 °F 150 °C; W2 ends at 600 °F.
    expect([299, 300, 801].map((figure) => meant("1084", figure))).toEqual([undefined, undefined, undefined]);
    expect([301, 302].map((figure) => meant("1084", figure))).toEqual([
      expect.closeTo(149.444, 3),
      expect.closeTo(150, 9),
    ]);
    expect([600, 601].map((figure) => meant("W2", figure))).toEqual([expect.closeTo(315.556, 3), undefined]);
    // The rows of H13 begin at 350 °C, 662 °F.
    expect([650, 663].map((figure) => meant("H13", figure))).toEqual([undefined, expect.closeTo(350.556, 3)]);
    expect(meant("304", 400)).toBeUndefined();
  });

  test("with a reading that fits only so is told so", () => {
    const at = (celsius: number, hrc: number, steel = "1084") => {
      const known = { celsius, hrc };
      return () => temperedHardness(findSteel(steel), celsius, { hours: 2, known });
    };
    const expected = temperedHardness(findSteel("1084"), 204.444, { hours: 2 });
    for (const off of [0, 2.9, -2.9])
      expect(at(400, expected + off)).toThrow(
        /does not go with 400 °C \(752 °F\) but with 204 °C \(400 °F\): write "400F" if 400 °F was meant/,
      );
    for (const off of [3.1, -3.1]) expect(at(400, expected + off)).toThrow(/did not harden as assumed/);
    // 299 is no usual figure in °F; the rows of H13 begin at 350 °C, so that 400 °F is none of them.
    expect(at(299, 65)).toThrow(/did not harden as assumed/);
    expect(at(400, 60, "H13")).toThrow(/did not harden as assumed/);
  });
});
