import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import type { Steel } from "../../src/core/steel/steel";
import { fittedCurves, type TableFit } from "../../src/core/tempering/fits";
import { hollomonJaffe } from "../../src/core/tempering/hollomon-jaffe";
import { tableModel } from "../../src/core/tempering/table-model";
import { temperModel } from "../../src/core/tempering/tempering-model";

const withCarbon = (grade: string, C: number): Steel => {
  const steel = findSteel(grade);
  return { ...steel, composition: { ...steel.composition, C } };
};

describe("a steel by the formula", () => {
  test("0.70 % C is the first at which the hardening temperature taken is told", () => {
    // The limit is that of the relation of carbon in solution, 0.70 % C and more.
    const told = (carbon: number) => temperModel(findSteel(`C ${carbon} Mn 0.4 Cr 0.5`)).assumptions;
    expect(told(0.7)).toEqual(["hardening from 815 °C (1499 °F) taken, none was given"]);
    expect(told(0.69)).toEqual([]);
  });

  test("its spans are those that its relation prints", () => {
    // 100 to 430 °C, 10 minutes to 24 h.
    const { minC, maxC, minHours, maxHours } = temperModel(findSteel("C 0.6 Mn 0.8"));
    expect([minC, maxC, minHours * 60, maxHours]).toEqual([100, 430, 10, 24]);
  });
});

describe("rows that begin at 204 °C are carried on below by the formula where it takes the carbon", () => {
  // The formula prints 0.35 to 1.15 % C; the rows of 1050 end at 204.4 and 593.3 °C.
  test.each([0.35, 1.15])("%d %% C: from 100 °C", (carbon) => {
    const { minC, maxC, relations } = temperModel(withCarbon("1050", carbon));
    expect([minC, maxC, relations.length]).toEqual([100, 593.3, 2]);
  });

  test.each([0.34, 1.16, Number.NaN])("%d %% C: the rows alone", (carbon) => {
    const rows = temperModel(withCarbon("1050", carbon));
    expect([rows.minC, rows.maxC, rows.relations.length]).toEqual([204.4, 593.3, 1]);
    expect(rows.basisAt(rows.curve.from)).toBe("own curve of 1050");
    expect([430, 430.1].map((celsius) => rows.halfWidthAt(celsius, 13))).toEqual([2.5, 5.5]);
  });

  test("1035, the leanest grade with rows, stands on the limit and is carried on", () => {
    expect(temperModel(findSteel("1035")).minC).toBe(100);
  });

  test("the two meet where the rows begin", () => {
    const { curve } = temperModel(findSteel("1050"));
    expect(curve.hrcAt(8.5959 - 1e-9)).toBeCloseTo(curve.hrcAt(8.5959), 6);
  });
});

test("a steel keeps the models of fifty hardening temperatures, so that a long column cannot fill the memory", () => {
  const steel = { ...findSteel("1084") };
  const first = temperModel(steel, 801);
  for (let hardenC = 802; hardenC <= 850; hardenC += 1) temperModel(steel, hardenC);
  expect(temperModel(steel, 801)).toBe(first);
  temperModel(steel, 851);
  expect(temperModel(steel, 801)).not.toBe(first);
});

describe("tables made up for the test", () => {
  const steel = findSteel("A2");
  const [a2] = fittedCurves("A2") as [TableFit];
  const at = (celsius: number) => hollomonJaffe(celsius, 4);
  const cool: TableFit = {
    ...a2,
    hardenC: [1000, 1000],
    temperC: [200, 450],
    knots: [
      [200, 64],
      [300, 60],
      [450, 54],
    ],
  };
  const hot: TableFit = {
    ...a2,
    hardenC: [1040, 1040],
    temperC: [250, 500],
    knots: [
      [250, 66],
      [300, 64],
      [500, 56],
    ],
  };

  test("between two only what both cover, and a straight line in the hardening temperature", () => {
    const { minC, maxC, curve, relations } = tableModel(steel, [cool, hot], 1010);
    expect([minC, maxC, relations.length]).toEqual([250, 450, 2]);
    expect([curve.from, curve.to]).toEqual([at(250), at(450)]);
    // A quarter of the way from 60 to 64 HRC.
    expect(curve.hrcAt(at(300))).toBeCloseTo(61, 9);
  });

  test("at its own hardening temperature a table stands alone, over its whole span", () => {
    const spans = [1000, 1040].map((hardenC) => {
      const { minC, maxC, relations } = tableModel(steel, [cool, hot], hardenC);
      return [minC, maxC, relations.length];
    });
    expect(spans).toEqual([
      [200, 450, 1],
      [250, 500, 1],
    ]);
  });

  test("one whose source prints no hardening temperature holds for any, at its plain width", () => {
    const { halfWidthAt, assumptions } = tableModel(steel, [{ ...a2, hardenC: null }], 1100);
    expect([halfWidthAt(200, 10), assumptions]).toEqual([2.5, []]);
  });

  test("a fit to rows beside a table takes no part", () => {
    const { relations, basisAt } = tableModel(steel, [...fittedCurves("1084"), a2], undefined);
    expect(relations).toHaveLength(1);
    expect(basisAt(10)).toBe("own table of A2");
  });
});
