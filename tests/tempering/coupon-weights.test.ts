import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { COMPOSITION_FORMULA } from "../../src/core/tempering/composition-formula";
import { COUPON_FIT, type Coupon, couponRelations, fitCoupons } from "../../src/core/tempering/coupons";
import { hollomonJaffe } from "../../src/core/tempering/hollomon-jaffe";
import { temperedHardness } from "../../src/core/tempering/tempered";
import { temperModel } from "../../src/core/tempering/tempering-model";

/*
 * The weights against a sum over a fine grid of shifts and slopes: Bayes' rule written out, without the
 * closed form. Prior and scatter are those that the relation prints.
 */

const steel = findSteel("1084");
const HOURS = 2;
const published = (celsius: number) => temperedHardness(steel, celsius, { hours: HOURS, cycles: 1 });
const coupon = (celsius: number, above: number): Coupon => ({
  celsius,
  hours: HOURS,
  hrc: published(celsius) + above,
});
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

interface Summed {
  readonly shift: number;
  readonly slope: number;
  readonly shiftVariance: number;
  readonly slopeVariance: number;
}

function summed(given: readonly (readonly [celsius: number, above: number])[]): Summed {
  const centre = mean(given.map(([celsius]) => celsius));
  const priorSd = temperModel(steel).halfWidthAt(centre, hollomonJaffe(centre, HOURS)) / 1.645;
  const total = { weight: 0, shift: 0, slope: 0, shift2: 0, slope2: 0 };
  for (let shift = -6; shift <= 6; shift += 0.02) {
    for (let slope = -6; slope <= 6; slope += 0.02) {
      let power = (shift / priorSd) ** 2 + slope ** 2;
      for (const [celsius, above] of given) {
        power += ((above - shift - (slope * (celsius - centre)) / 100) / 0.9) ** 2;
      }
      const weight = Math.exp(-power / 2);
      total.weight += weight;
      total.shift += weight * shift;
      total.slope += weight * slope;
      total.shift2 += weight * shift * shift;
      total.slope2 += weight * slope * slope;
    }
  }
  const [shift, slope] = [total.shift / total.weight, total.slope / total.weight];
  return {
    shift,
    slope,
    shiftVariance: total.shift2 / total.weight - shift ** 2,
    slopeVariance: total.slope2 / total.weight - slope ** 2,
  };
}

const fitted = (given: readonly (readonly [number, number])[], atC?: number) =>
  fitCoupons(
    steel,
    given.map(([celsius, above]) => coupon(celsius, above)),
    { hours: HOURS, atC },
  );

const SETS: readonly (readonly (readonly [number, number])[])[] = [
  [[200, 1.5]],
  [
    [180, 1],
    [260, -0.5],
  ],
  [
    [180, 1.2],
    [220, 0.4],
    [300, -1.1],
  ],
];

describe("shift, slope and ± from the coupons", () => {
  test.each(SETS)("agree with the sum over a grid, %j %j %j", (...given) => {
    const set = given.filter((one) => one !== undefined);
    const expected = summed(set);
    const centre = mean(set.map(([celsius]) => celsius));
    const found = fitted(set);
    expect(found.knownC).toBeCloseTo(centre, 9);
    expect(found.shift).toBeCloseTo(expected.shift, 3);
    expect(found.slope).toBeCloseTo(expected.slope, 3);
    expect(found.knownHrc).toBeCloseTo(published(centre) + expected.shift, 3);
    // 60 °C hotter: variances of shift and slope, of the wander from the nearest coupon, and of a reading.
    const at = centre + 60;
    const nearest = Math.min(...set.map(([celsius]) => Math.abs(at - celsius))) / 100;
    const variance = expected.shiftVariance + 0.36 * expected.slopeVariance + nearest ** 2 + 0.81;
    expect(fitted(set, at).halfWidth).toBeCloseTo(1.645 * Math.sqrt(variance), 3);
    expect(fitted(set, at).shift).toBeCloseTo(expected.shift + 0.6 * expected.slope, 3);
  });

  test("the worst misfit is the one farthest off, with its sign", () => {
    expect(
      fitted([
        [180, 2],
        [181, -0.4],
        [182, -0.4],
      ]).worstMisfit,
    ).toBeGreaterThan(0.5);
    expect(
      fitted([
        [180, 0.4],
        [181, 0.4],
        [182, -2],
      ]).worstMisfit,
    ).toBeLessThan(-0.5);
    expect(fitted([[200, 1.5]]).readings).toBe(1);
  });
});

describe("coupons that contradict each other", () => {
  test("two may differ by what readings differ by, not by 3 HRC from what the other says", () => {
    expect(() =>
      fitted([
        [200, 1.5],
        [202, -1],
      ]),
    ).not.toThrow();
    expect(() =>
      fitted([
        [200, 2.9],
        [202, -2.9],
      ]),
    ).toThrow(/contradict each other: coupon 1 .*over what the others say/);
    expect(() =>
      fitted([
        [200, -2.9],
        [202, 2.9],
        [204, 2.8],
      ]),
    ).toThrow(/coupon 1 \([\d.]+ HRC after 200 °C .* under what the others say/);
  });

  test("one that cannot have hardened is named by its number", () => {
    expect(() =>
      fitted([
        [200, 0],
        [210, -8],
      ]),
    ).toThrow(/^coupon 2: /);
  });
});

test("relations: the weights, then what is published for the steel", () => {
  const titles = (relations: readonly { readonly title: string }[]) => relations.map(({ title }) => title);
  expect(titles(couponRelations(null, [COMPOSITION_FORMULA]))).toEqual([
    COUPON_FIT.title,
    COMPOSITION_FORMULA.title,
  ]);
  expect(titles(couponRelations(steel, []))).toEqual([
    COUPON_FIT.title,
    ...titles(temperModel(steel).relations),
  ]);
  expect(titles(couponRelations(findSteel("304"), []))).toEqual([COUPON_FIT.title]);
});
