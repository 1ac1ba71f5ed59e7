import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { type Coupon, fitCoupons } from "../../src/core/tempering/coupons";
import { temperedHardness } from "../../src/core/tempering/tempered";
import { TEMPER_FIT, TEMPER_FOR } from "../../src/functions/tempering";
import { answer } from "../tools/worksheet-examples";

type Row = readonly [steel: string, celsius: number, hours: number, hrc: number];

interface Table {
  readonly quantity: string;
  readonly fitted: boolean;
  readonly rows: readonly Row[];
}

const FOLDER = new URL("./published/", import.meta.url);

/** Measured series that took no part in a curve, up to 430 °C: each stands for one shop's steel. */
const SERIES: readonly (readonly Row[])[] = readdirSync(FOLDER)
  .map((name) => JSON.parse(readFileSync(new URL(name, FOLDER), "utf8")) as Table)
  .filter(({ quantity, fitted }) => quantity === "hardness after temper" && !fitted)
  .flatMap(({ rows }) => {
    const steels = [...new Set(rows.map(([steel]) => steel))];
    return steels.map((name) => rows.filter(([steel]) => steel === name));
  })
  .map((rows) => rows.filter(([, celsius]) => celsius <= 430))
  .filter((rows) => rows.length >= 3);

const couponOf = ([, celsius, hours, hrc]: Row): Coupon => ({ celsius, hours, hrc });

function shiftOf([steel, celsius, hours, hrc]: Row): number {
  return hrc - temperedHardness(findSteel(steel), celsius, { hours, cycles: 1 });
}

/** Whether the fit to some rows of a series holds another of its rows within its ±. */
function holds(known: readonly Row[], [steel, celsius, hours, hrc]: Row): boolean {
  const fit = fitCoupons(findSteel(steel), known.map(couponOf), { hours, atC: celsius });
  return Math.abs(hrc - fit.knownHrc) <= fit.halfWidth;
}

/** Rows held from the coolest `count` rows of their series, for series whose coupons the 3 HRC rule accepts. */
function heldFrom(count: number): boolean[] {
  return SERIES.filter((rows) => rows.length > count).flatMap((rows) => {
    const sorted = [...rows].sort((a, b) => a[1] - b[1]);
    const known = sorted.slice(0, count);
    if (known.some((row) => Math.abs(shiftOf(row)) > 3)) return [];
    return sorted.slice(count).map((row) => holds(known, row));
  });
}

test.each([1, 2, 3])(
  "the ± from %d coupons holds nine tenths of the other rows of the same series",
  (count) => {
    const held = heldFrom(count);
    const inside = held.filter(Boolean).length / held.length;
    console.info(`${count} coupons: ${held.length} rows, ${(100 * inside).toFixed(0)} % inside the ±`);
    expect(held.length).toBeGreaterThan(10);
    expect(inside).toBeGreaterThanOrEqual(0.9);
  },
);

describe("the shop's own coupons", () => {
  const steel = findSteel("5160");
  const at = (celsius: number, off: number): Coupon => ({
    celsius,
    hours: 2,
    hrc: temperedHardness(steel, celsius, { hours: 2, cycles: 1 }) + off,
  });
  const weighed = (...coupons: Coupon[]) => fitCoupons(steel, coupons, { hours: 2 });

  test("more of them move the curve farther and earn a narrower ±", () => {
    const one = weighed(at(205, -1));
    const five = weighed(at(205, -1), at(205, -1), at(205, -1), at(205, -1), at(205, -1));
    expect(Math.abs(five.shift)).toBeGreaterThan(Math.abs(one.shift));
    expect(five.shift).toBeGreaterThan(-1);
    expect(five.halfWidth).toBeLessThan(one.halfWidth);
  });

  test("spread tempers turn the slope, tempers side by side do not", () => {
    const spread = weighed(at(180, 1), at(260, -1), at(340, -2));
    const near = weighed(at(205, 1), at(207, -1));
    expect(spread.slope).toBeLessThan(-0.5);
    expect(Math.abs(near.slope)).toBeLessThan(0.05);
  });

  test("the ± widens away from them", () => {
    const coupons = [at(200, 0), at(220, 0)];
    const near = fitCoupons(steel, coupons, { hours: 2, atC: 210 });
    const far = fitCoupons(steel, coupons, { hours: 2, atC: 350 });
    expect(far.halfWidth).toBeGreaterThan(near.halfWidth + 0.3);
  });

  test("the order of the coupons does not matter", () => {
    const coupons = [at(180, 1), at(230, -0.5), at(260, 0.4)];
    const [one, other] = [weighed(...coupons), weighed(...[...coupons].reverse())];
    expect(other.shift).toBeCloseTo(one.shift, 12);
    expect(other.slope).toBeCloseTo(one.slope, 12);
  });
});

describe("TEMPER_FIT", () => {
  const cells = (...values: (number | null)[]) => values.map((value) => [value]);

  test("moves TEMPER_FOR: a shop that reads soft tempers cooler", () => {
    const [row] = answer(TEMPER_FIT, "5160", cells(205, 230), cells(57.8, 56.6));
    const [plain] = answer(TEMPER_FOR, "5160", 56);
    const [moved] = answer(TEMPER_FOR, "5160", 56, 2, 1, row?.[0], row?.[1]);
    expect(moved?.[0] as number).toBeLessThan((plain?.[0] as number) - 5);
  });

  test("empty pairs are no coupons; half a pair is named", () => {
    const full = answer(TEMPER_FIT, "5160", cells(205, 230), cells(58, 57));
    expect(answer(TEMPER_FIT, "5160", cells(205, null, 230), cells(58, null, 57))).toEqual(full);
    expect(answer(TEMPER_FIT, "5160", cells(205, 230), cells(58, null))[0]?.[0]).toMatch(
      /#VALUE! coupon 2 has a temper but no reading/,
    );
    expect(answer(TEMPER_FIT, "5160", cells(205, 230), cells(58))[0]?.[0]).toMatch(
      /2 tempers but 1 readings/,
    );
  });

  test("a coupon more than 3 HRC off is refused with what to check", () => {
    expect(answer(TEMPER_FIT, "1095", cells(204, 204), cells(61, 43))[0]?.[0]).toMatch(
      /#N\/A coupon 2: .*check section, quench, decarburised skin/,
    );
  });

  test("coupons that contradict each other: the worst is named", () => {
    expect(answer(TEMPER_FIT, "5160", cells(205, 205, 205), cells(58.5, 58.7, 62.2))[0]?.[0]).toMatch(
      /contradict each other: coupon 3 \(62\.2 HRC after 205 °C \(401 °F\)\)/,
    );
  });

  test("each coupon may have its own time", () => {
    const [row] = answer(TEMPER_FIT, "5160", cells(205, 205), cells(58.6, 58.2), cells(2, 4));
    expect(row?.[5] as number).toBeLessThanOrEqual(0.3);
  });
});
