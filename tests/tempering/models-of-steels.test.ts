import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { hollomonJaffe } from "../../src/core/tempering/hollomon-jaffe";
import { temperModel } from "../../src/core/tempering/tempering-model";

/* Rows, spans and hardening temperatures as src/core/tempering/fits.json takes them from the sources. */

const model = (steel: string, hardenC?: number) => temperModel(findSteel(steel), hardenC);
const at = (steel: string, celsius: number, hours: number, hardenC?: number) =>
  model(steel, hardenC).curve.hrcAt(hollomonJaffe(celsius, hours));

describe("a steel by the formula", () => {
  test("says so, names its limits and its band", () => {
    const { minC, maxC, minHours, maxHours, relations, assumptions } = model("C 0.6 Mn 0.8 Si 0.25");
    expect([minC, minHours, relations.length, assumptions]).toEqual([100, expect.any(Number), 1, []]);
    expect(maxC).toBeGreaterThan(400);
    expect(maxHours).toBeGreaterThan(minHours);
    expect(minHours).toBeGreaterThan(0);
    expect(model("C 0.6 Mn 0.8").basisAt(10)).toBe("by formula from composition");
    expect(model("5160").basisAt(10)).toBe("no published curve of 5160 held, by formula from composition");
  });

  test("from 0.70 % C with chromium it says what hardening it took, unless one was given", () => {
    expect(model("52100").assumptions).toEqual([
      expect.stringMatching(/^hardening from \d+ °C .* taken, none was given$/),
    ]);
    expect(model("52100", 845).assumptions).toEqual([]);
    expect(model("C 0.9 Mn 0.4").assumptions).toEqual([]);
    expect(model("C 0.6 Mn 0.4 Cr 0.5").assumptions).toEqual([]);
    // More chromium and carbon in solution from a hotter hardening.
    expect(at("52100", 200, 2, 870)).not.toBe(at("52100", 200, 2, 830));
  });

  test("more silicon than was fitted is said", () => {
    expect(model("C 0.6 Mn 0.8 Si 2").assumptions).toEqual([
      "more silicon than any steel behind the formula: ±4 HRC",
    ]);
  });
});

describe("a curve of the grade's own", () => {
  test("reaches down to 150 °C by its own rows, or joins the formula below them", () => {
    const own = model("1084");
    expect([own.minC, own.relations.length, own.assumptions]).toEqual([100, 1, []]);
    expect(own.basisAt(7)).toBe("own curve of 1084");
    const joined = model("1050");
    expect(joined.relations).toHaveLength(2);
    // The rows of 1050 begin at a parameter of 8.5959.
    expect(joined.basisAt(8.59)).toBe("by formula from composition, joined to the own curve of 1050");
    expect(joined.basisAt(8.5959)).toBe("own curve of 1050");
    expect([joined.halfWidthAt(200, 8.59), joined.halfWidthAt(200, 8.5959)]).toEqual([3, 2.5]);
    expect(joined.minC).toBe(100);
  });

  test("its band widens above 430 °C", () => {
    expect([430, 430.1].map((celsius) => model("1084").halfWidthAt(celsius, 14))).toEqual([2.5, 5.5]);
  });

  test("is prepared once for each hardening temperature", () => {
    const steel = findSteel("1084");
    expect(temperModel(steel)).toBe(temperModel(steel));
    const first = temperModel(steel, 800);
    expect(temperModel(steel, 800)).toBe(first);
    for (let hardenC = 801; hardenC < 850; hardenC += 1) temperModel(steel, hardenC);
    expect(temperModel(steel, 849)).toBe(temperModel(steel, 849));
  });
});

describe("a steelmaker's table", () => {
  test("holds at its own hardening temperature, 1 HRC wider from 15 °C off, not at all from 30", () => {
    // A2: hardened from 970 °C.
    const width = (hardenC?: number) => model("A2", hardenC).halfWidthAt(200, 10);
    expect([undefined, 970, 985, 955, 986, 954, 1000, 940].map(width)).toEqual([
      2.5, 2.5, 2.5, 2.5, 3.5, 3.5, 3.5, 3.5,
    ]);
    expect(model("A2", 985).assumptions).toEqual([]);
    expect(model("A2", 986).assumptions).toEqual([
      "hardened away from the temperature of its table: band widened",
    ]);
    expect(() => model("A2", 1001)).toThrow(
      /A2, hardened from 970 °C \(1778 °F\): no answer more than 30 °C \(54 °F\) away/,
    );
    // O2: a window, 790 to 820 °C.
    expect([790, 820, 835].map((hardenC) => model("O2", hardenC).halfWidthAt(200, 10))).toEqual([
      2.5, 2.5, 2.5,
    ]);
    expect(() => model("O2", 851)).toThrow(/hardened from 790 °C \(1454 °F\) to 820 °C/);
    expect(model("A2").basisAt(10)).toBe("own table of A2");
    expect(model("A2").relations).toHaveLength(1);
  });

  test("M2: each of its hardening temperatures, straight lines between two, nothing outside", () => {
    const m2 = "M2 (regular C)";
    // 4 h in all at 540 °C: 60 HRC from 1065 °C, 61 from 1095, 62 from 1120, 65 from 1205.
    expect([1065, 1095, 1080, 1120, 1205].map((hardenC) => at(m2, 540, 4, hardenC))).toEqual(
      [60, 61, 60.5, 62, 65].map((hrc) => expect.closeTo(hrc, 9)),
    );
    expect(model(m2, 1095).relations).toHaveLength(1);
    expect(model(m2, 1080).relations).toHaveLength(2);
    for (const outside of [1064, 1206])
      expect(() => model(m2, outside)).toThrow(/too far from that of the published table/);
    expect(model(m2).assumptions.join()).toContain("hardening from 1142 °C (2088 °F) taken");
    // Between 1150 (to 595 °C) and 1175 °C (to 565 °C) only what both tables cover.
    expect([model(m2, 1160).minC, model(m2, 1160).maxC]).toEqual([540, 565]);
  });
});
