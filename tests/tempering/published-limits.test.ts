import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { refuseWithoutCurve } from "../../src/core/tempering/no-curve";
import { oxideColour } from "../../src/core/tempering/oxide-colour";
import { temperingRelations } from "../../src/core/tempering/relations";
import { temperCurve } from "../../src/core/tempering/temper-curve";
import { temperedRange } from "../../src/core/tempering/tempered-range";

/*
 * What a steel is told of its curve, and where the published figures begin and end. Rows, times and
 * hardening temperatures are those that each source prints (tests/fitting/data, src/data/sources).
 */

const relations = (steel: string) => temperingRelations(findSteel(steel));
const own = (steel: string) => relations(steel)[0];

describe("the relation of a curve", () => {
  test("a fit to rows says how many, how near, and that one source is no test", () => {
    expect(own("1050")).toMatchObject({
      title: "Hardness after temper of 1050",
      source: "grange-baughman-1956",
      locator: expect.stringContaining("cubic in the Hollomon-Jaffe parameter"),
      evidence: "fitted",
      inputs: { temperC: { label: "temper", unit: "°C", min: 204.4, max: 593.3 } },
      output: { label: "hardness", unit: "HRC" },
      error: { size: 2.5, unit: "HRC", kind: expect.stringContaining("90 %") },
      note: expect.stringMatching(/^20 rows, 1\.22 HRC .*, in sample only: one source$/),
    });
    expect(own("1050")?.inputs).not.toHaveProperty("hardenC");
  });

  test("a fit to two sources names the second, and is not in sample only", () => {
    expect(own("1045")?.source).toBe("grange-baughman-1956");
    expect(own("1045")?.note).toMatch(/^35 rows, 0\.68 HRC .*; also \S/);
    expect(own("1045")?.note).not.toContain("in sample only");
  });

  test("a steelmaker's table says its hardening temperature and whether it prints a time", () => {
    expect(own("440C")).toMatchObject({
      source: "rolled-alloys-440c",
      locator: "hardness table",
      evidence: "measured",
      inputs: {
        temperC: { min: 149, max: 427 },
        hardenC: { label: "hardening temperature", unit: "°C", min: 1038, max: 1038 },
      },
      note: "6 rows, 1 h in all",
    });
    expect(own("H13")?.note).toMatch(/^7 rows, no time printed, 2 h taken; as printed it rises/);
    expect(own("O2")?.inputs.hardenC).toMatchObject({ min: 790, max: 820 });
  });

  test("M2 has a table for each of its six hardening temperatures", () => {
    expect(relations("M2 (regular C)").map(({ title }) => title)).toHaveLength(8);
    expect(
      relations("M2 (regular C)")
        .slice(0, 6)
        .map(({ inputs }) => inputs.hardenC?.min),
    ).toEqual([1065, 1095, 1120, 1150, 1175, 1205]);
  });

  test("any steel, a steel by formula, a steel without an answer", () => {
    const titles = (steel: string) => relations(steel).map(({ title }) => title);
    const any = temperingRelations(null).map(({ title }) => title);
    expect(any).toHaveLength(3);
    expect(titles("5160")).toEqual(any);
    expect(titles("304")).toEqual(any.slice(1));
    // Above the rows of its own curve 1050 is answered by the formula.
    expect(titles("1050").slice(1)).toEqual(any);
  });
});

describe("steels that only a table of their own could answer for", () => {
  const refusal = (steel: string) => () => refuseWithoutCurve(findSteel(steel));

  test("1.8 % Cr is the last that passes", () => {
    expect(refusal("C 0.6 Mn 0.7 Cr 1.8")).not.toThrow();
    expect(refusal("C 0.6 Mn 0.7 Cr 1.81")).toThrow(
      /^no tempering curve of .* is held, and the composition formula ends at 1\.5\d? % Cr \(1\.81 % here\)$/,
    );
  });

  test("single tempers that are published are told, one temperature or a span, one hardness or a span", () => {
    // 420: 52 HRC after 150 to 205 °C, 51.2 HRC after 315.6 °C; X30Cr13: 24 to 31 HRC after 625 to 675 °C.
    expect(refusal("420")).toThrow(
      /; published: 52 HRC after 150 °C \(302 °F\) to 205 °C \(401 °F\) \(.*\); 51\.2 HRC after 316 °C \(600 °F\) \(/,
    );
    expect(refusal("X30Cr13")).toThrow(/24 to 31 HRC after 625 °C \(1157 °F\) to 675 °C/);
    expect(refusal("1050")).not.toThrow();
  });
});

describe("oxide colours, from the lowest to the highest figure of three lists", () => {
  const colours = (celsius: number) =>
    [...oxideColour(celsius).matchAll(/(?:^| to )([a-z][a-z ]*?) \(\d/g)].map(([, name]) => name);

  test("a temperature inside one span or two gives those", () => {
    expect(colours(205)).toEqual(["pale straw"]);
    // Straw is printed from 220 °C to 460 °F (238 °C), pale straw up to 445 °F (229 °C).
    expect(colours(225)).toEqual(["pale straw", "straw"]);
    expect(colours(315)).toEqual(["light blue"]);
  });

  test("between two spans both neighbours are given, coolest first", () => {
    // Dark blue ends at 575 °F (301.7 °C), light blue begins at 310 °C; half a degree counts as at the end.
    expect(colours(302.1)).toEqual(["dark blue"]);
    expect(colours(302.3)).toEqual(["dark blue", "light blue"]);
    expect(colours(306)).toEqual(["dark blue", "light blue"]);
    expect(colours(309.4)).toEqual(["dark blue", "light blue"]);
    expect(colours(309.6)).toEqual(["light blue"]);
    expect(oxideColour(306)).toContain(
      "dark blue (290 °C (554 °F) to 302 °C (575 °F)) to light blue (310 °C",
    );
  });

  test("the lists end at 199 and 332 °C", () => {
    expect(colours(199)).toEqual(["pale straw"]);
    expect(colours(332)).toEqual(["grey"]);
    expect(() => oxideColour(198)).toThrow(/is outside 199 °C/);
    expect(() => oxideColour(333)).toThrow(/is outside/);
  });
});

describe("a curve over a span of tempers", () => {
  const curve = (steel: string, from: number | undefined, to: number | undefined, step = 25) =>
    temperCurve(findSteel(steel), { from, to, step }, 2).map(([celsius]) => celsius);

  test("left out, it runs from 150 to 425 °C or as far as is published", () => {
    expect(curve("1095", undefined, undefined)).toEqual([
      150, 175, 200, 225, 250, 275, 300, 325, 350, 375, 400, 425,
    ]);
    // H13: the table begins at 350 °C; at the 2 h of the table its own rows are the ends.
    const [first] = curve("H13", undefined, undefined);
    expect(first).toBe(350);
    // W2: the table ends at 315.6 °C.
    expect(curve("W2", undefined, undefined, 5).at(-1)).toBe(315);
  });

  test("an end that was given must be published; both of the ends themselves are", () => {
    expect(() => curve("H13", 300, 400)).toThrow(/300 °C/);
    expect(() => curve("H13", 400, 700)).toThrow(/700 °C/);
    expect(() => curve("W2", 350, undefined)).toThrow(/350 °C/);
    expect(() => curve("H13", undefined, 300)).toThrow(/300 °C/);
    expect(curve("H13", 350, 650, 100)).toEqual([350, 450, 550, 650]);
    expect(curve("W2", 100, 300, 100)).toEqual([100, 200, 300]);
  });

  test("one temper is a curve of one point, ends the wrong way round are none", () => {
    expect(curve("1095", 200, 200)).toEqual([200]);
    expect(() => curve("1095", 300, 200)).toThrow(/a curve from 300 °C .* to 200 °C .* is empty/);
  });

  test("a thousand points at most", () => {
    expect(curve("1095", 200, 299.9, 0.1)).toHaveLength(1000);
    expect(() => curve("1095", 200, 300, 0.1)).toThrow(/step C: 0\.1 given, too many points .* 1000 at most/);
  });
});

describe("what a band takes for granted", () => {
  const caution = (steel: string, celsius = 200) =>
    temperedRange(findSteel(steel), celsius, { hours: 2, cycles: 1 }).caution;

  test("how thick a section hardens in fast oil: whole millimetres, fives from 10 mm", () => {
    // 1084 by the plate series: 5.6 mm, tested in tests/hardening; O1, nose at 9.84 s: 28.7 mm.
    expect(caution("1084")).toContain("taken as hardened through: 1084, fast oil: about 6 mm fully hard");
    expect(caution("O1")).toContain("O1, fast oil: about 30 mm fully hard");
    // The same sentence when asked again.
    expect(caution("1084")).toBe(caution("1084"));
  });

  test("an air-hardening steel says how thick it hardens in still air", () => {
    expect(caution("D2")).toMatch(/taken as hardened through: D2 hardens in still air to about 100 mm(;|$)/);
    expect(caution("1084", 150)).not.toMatch(/^; |; ;|; $/);
  });

  test("a reading of the same steel narrows the band, less so 75 °C away", () => {
    const band = (celsius: number) => {
      const known = { celsius: 200, hrc: 61 };
      return temperedRange(findSteel("1084"), celsius, { hours: 2, cycles: 1, known });
    };
    const below = [200, 274, 275, 276, 125, 124].map((celsius) => band(celsius).likely - band(celsius).low);
    expect(below).toEqual([2, 2, 2, 2.5, 2, 2.5].map((half) => expect.closeTo(half, 9)));
    // What was tempered hotter is no harder: the wider error does not lift the top.
    expect(band(276).high).toBeCloseTo(band(275).high, 9);
  });
});
