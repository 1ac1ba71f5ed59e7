import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import {
  checkChromium,
  formulaHalfWidth,
  siliconBeyondFit,
} from "../../src/core/tempering/composition-formula";
import { equivalentTime } from "../../src/core/tempering/hollomon-jaffe";
import { temperFor } from "../../src/core/tempering/temper-for";
import { temperedHardness } from "../../src/core/tempering/tempered";

// The limits are those that the sentences and the relations print.

const STEEL = findSteel("5160");
const ONCE = { hours: 2, cycles: 1 };
const at = (hrc: number) => () => temperedHardness(STEEL, 250, { ...ONCE, known: { celsius: 200, hrc } });

describe("ends of the Rockwell C scale", () => {
  test.each([19.9, 68.1, Number.NaN, Number.POSITIVE_INFINITY])(
    "a reading or a target of %d is none",
    (hrc) => {
      expect(at(hrc)).toThrow("the C scale runs from 20 to 68 HRC");
      expect(() => temperFor(STEEL, hrc, ONCE)).toThrow("the C scale runs from 20 to 68 HRC");
    },
  );

  test.each([20, 68])("%d is on it, only too far from the curve or out of reach", (hrc) => {
    expect(at(hrc)).toThrow("the coupon did not harden as assumed");
    expect(() => temperFor(STEEL, hrc, ONCE)).toThrow("out of reach");
  });
});

describe("a known reading", () => {
  const plain = temperedHardness(STEEL, 200, ONCE);

  test("says on which side of the curve it lies when it lies too far", () => {
    expect(at(plain + 3.2)).toThrow("3.2 HRC over the");
    expect(at(plain - 3.2)).toThrow("3.2 HRC under the");
  });

  test("moves what is out of reach along with the curve", () => {
    const reach = (known?: { celsius: number; hrc: number }) => {
      try {
        temperFor(STEEL, 68, { ...ONCE, known });
      } catch (thrown) {
        return Number(/up is ([\d.]+) HRC/.exec(String(thrown))?.[1]);
      }
      return Number.NaN;
    };
    const moved = reach({ celsius: 200, hrc: plain - 2 }) - reach();
    expect(moved).toBeCloseTo(-2, 1);
  });
});

describe("several tempers as one", () => {
  const together = (celsius: number, hours: number, referenceC: number) => () =>
    equivalentTime([{ celsius, hours }], referenceC);

  test("too short and too long a time are told apart", () => {
    expect(together(150, 1, 600)).toThrow("under 10 seconds");
    expect(together(600, 1, 150)).toThrow("over 1000 h");
    expect(together(200, 2, 200)()).toBeCloseTo(2, 9);
  });
});

test("a temper below absolute zero is none", () => {
  expect(() => temperedHardness(STEEL, -273.15, ONCE)).toThrow("below absolute zero");
});

describe("silicon and chromium of the formula", () => {
  const withSilicon = (Si: number) => ({ ...STEEL.composition, Si });

  test("the band widens above 1.7 % Si, not at it", () => {
    expect([formulaHalfWidth(withSilicon(1.7)), formulaHalfWidth(withSilicon(1.71))]).toEqual([3, 4]);
    expect([siliconBeyondFit(withSilicon(1.7)), siliconBeyondFit(withSilicon(1.71))]).toEqual([false, true]);
  });

  test("1.5 % Cr in solution is accepted, more is not", () => {
    expect(() => checkChromium("a steel", 1.5)).not.toThrow();
    expect(() => checkChromium("a steel", 1.51)).toThrow("chromium in solution 1.51 %");
  });
});
