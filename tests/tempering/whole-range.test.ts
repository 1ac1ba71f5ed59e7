import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NotAvailable } from "../../src/core/refusal";
import { findSteel } from "../../src/core/steel/find";
import type { Steel } from "../../src/core/steel/steel";
import { temperFor } from "../../src/core/tempering/temper-for";
import { temperSpan, wholeDegrees } from "../../src/core/tempering/temper-limits";
import { temperPlan } from "../../src/core/tempering/temper-plan";
import { temperedHardness } from "../../src/core/tempering/tempered";
import { temperModel } from "../../src/core/tempering/tempering-model";
import { temperSpanFor } from "../../src/core/tempering/usual-tempers";
import { GRADES_WITH_CURVE } from "./curve-grades";

/** Every grade with a curve of its own, and steels that the formula answers for. */
const ALL = [
  ...GRADES_WITH_CURVE.filter((grade) => grade !== "45"),
  "1060",
  "1070",
  "1080",
  "5160",
  "6150",
  "52100",
  "80CrV2",
  "75Ni8",
  "9260",
  "8670",
  "C 0.55 Mn 0.8 Si 0.25 Ni 1.8 Cr 0.9 Mo 0.3",
];
/** Plateaus and peaks of the published tables: secondary hardening is real there. */
const NOT_FALLING = new Set([
  "A2",
  "X100CrMoV5",
  "D2",
  "X153CrMoV12",
  "S7",
  "H13",
  "X40CrMoV5-1",
  "M2 (regular C)",
  "HS6-5-2C",
  "440B",
  "X90CrMoV18",
  "440C",
  "X105CrMo17",
]);
const HARDENED: Readonly<Record<string, number>> = { "M2 (regular C)": 1120, "HS6-5-2C": 1120 };

interface Case {
  readonly steel: Steel;
  readonly hardenC: number | undefined;
  readonly falls: boolean;
}

const CASES: readonly Case[] = ALL.map((name) => ({
  steel: findSteel(name),
  hardenC: HARDENED[name],
  falls: !NOT_FALLING.has(name),
}));

const hours = fc.constantFrom(0.5, 1, 2, 4, 8, 12);
const share = fc.double({ min: 0, max: 1, noNaN: true });
const any = fc.constantFrom(...CASES);
const falling = fc.constantFrom(...CASES.filter(({ falls }) => falls));

const treat = ({ hardenC }: Case, time: number) => ({ hours: time, cycles: 1, hardenC });
const hrc = (one: Case, celsius: number, time: number) =>
  temperedHardness(one.steel, celsius, treat(one, time));

/** A temper at a share of the way through the whole published range for a time. */
function within(one: Case, time: number, at: number): number {
  const [least, most] = temperSpan(temperModel(one.steel, one.hardenC), time);
  const [from, to] = [least + 1e-6, most - 1e-6];
  return from + at * (to - from);
}

describe("over the whole published range of every steel", () => {
  test("hotter is never harder where the rows fall", () => {
    fc.assert(
      fc.property(falling, hours, share, share, (one, time, a, b) => {
        const [cool, hot] = [within(one, time, Math.min(a, b)), within(one, time, Math.max(a, b))];
        expect(hrc(one, hot, time)).toBeLessThanOrEqual(hrc(one, cool, time) + 1e-9);
      }),
      { numRuns: 1000 },
    );
  });

  test("no jump: half a degree moves it by less than 0.2 HRC", () => {
    for (const one of CASES) {
      const [from, to] = [within(one, 2, 0), within(one, 2, 1)];
      for (let celsius = from; celsius + 0.5 <= to; celsius += 0.5) {
        expect(Math.abs(hrc(one, celsius + 0.5, 2) - hrc(one, celsius, 2))).toBeLessThan(0.2);
      }
    }
  });

  test("the temper for a hardness gives it back within 0.1 HRC, or names why there is not one", () => {
    fc.assert(
      fc.property(any, hours, share, (one, time, at) => {
        const model = temperModel(one.steel, one.hardenC);
        const [, hottest] = temperSpan(model, time);
        fc.pre(hottest > 150 && time >= model.minHours && time <= model.maxHours);
        // Whole degrees: a temper between the last of them and the end of the table is not advised.
        const [coolest, most] = wholeDegrees(temperSpanFor(model, time));
        fc.pre(coolest < most);
        const target = hrc(one, coolest + at * (most - coolest - 1e-6), time);
        fc.pre(target >= 20 && target <= 68);
        try {
          const celsius = temperFor(one.steel, target, treat(one, time));
          expect(Math.abs(hrc(one, celsius, time) - target)).toBeLessThan(0.1);
        } catch (thrown) {
          expect(one.falls).toBe(false);
          expect((thrown as NotAvailable).message).toMatch(/more than one temper/);
        }
      }),
      { numRuns: 1000 },
    );
  });

  test("a plan runs from start over likely to high, inside what may be advised", () => {
    fc.assert(
      fc.property(any, hours, fc.integer({ min: 20, max: 68 }), (one, time, target) => {
        const model = temperModel(one.steel, one.hardenC);
        const [, hottest] = temperSpan(model, time);
        fc.pre(hottest > 150 && time >= model.minHours && time <= model.maxHours);
        const plan = temperPlan(one.steel, target, treat(one, time));
        expect(plan.caution.length).toBeGreaterThan(20);
        if (plan.likelyC === null) {
          expect(["out of reach", "below usual temper"]).toContain(plan.flag);
          return;
        }
        expect(plan.startC).toBeLessThanOrEqual(plan.likelyC);
        expect(plan.likelyC).toBeLessThanOrEqual(plan.highC as number);
        expect(plan.startC).toBeGreaterThanOrEqual(150);
      }),
      { numRuns: 1000 },
    );
  });
});

test("refusals name the range: a degree beyond either end", () => {
  for (const one of CASES) {
    const [least, most] = [within(one, 2, 0), within(one, 2, 1)];
    expect(() => hrc(one, least - 1, 2)).toThrow(NotAvailable);
    expect(() => hrc(one, most + 1, 2)).toThrow(/°C \(\d+ °F\) is outside/);
  }
});

// By the definition of the scales, °F = 1.8 °C + 32: 187 °C is 368.6 °F, so 369; the temper before rounding read 368.
test("a plan says the same °F beside a whole °C wherever it stands", () => {
  for (const target of [52, 54, 56]) {
    const { caution } = temperPlan(findSteel("1095"), target, { hours: 2, cycles: 2 });
    const said = [...caution.matchAll(/(\d+) °C \((\d+) °F\)/g)];
    expect(said.length).toBeGreaterThanOrEqual(3);
    for (const [, celsius, fahrenheit] of said)
      expect(Number(fahrenheit)).toBe(Math.round(Number(celsius) * 1.8 + 32));
  }
});
