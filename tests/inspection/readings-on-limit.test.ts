import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/functions/evaluate";
import { READINGS } from "../../src/functions/inspection";
import { randomFrom } from "../stock/brute-force";

// Readings as a tester shows them: whole tenths or halves of an HRC, or hundredths of a digital one. The sum is kept in
// whole steps here, so that the mean is exact: no source is needed to say on which side of a limit it lies.

const random = randomFrom(7);
const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1));

interface Case {
  readonly readings: readonly number[];
  /** The mean, which is itself a figure of the tester. */
  readonly mean: number;
  readonly step: number;
}

/** Readings in steps of 1 / `scale` whose mean is a whole number of steps: the last reading makes it one. */
function onTheLimit(scale: number): Case {
  const count = whole(2, 9);
  const steps = Array.from({ length: count - 1 }, () => whole(50 * scale, 64 * scale));
  const sum = steps.reduce((total, step) => total + step, 0);
  const last = count * Math.round((sum + 57 * scale) / count) - sum;
  const all = [...steps, last];
  return {
    readings: all.map((step) => step / scale),
    mean: all.reduce((total, step) => total + step, 0) / count / scale,
    step: 1 / scale,
  };
}

const CASES: readonly Case[] = [2, 10, 100].flatMap((scale) =>
  Array.from({ length: 500 }, () => onTheLimit(scale)),
);

function verdict(readings: readonly number[], low: number | null, high: number | null): string {
  const [row = []] = evaluate(READINGS, [readings.map((value) => [value]), low, high]);
  return String(row.at(-1));
}

describe("a mean on a limit", () => {
  test("is not outside it, whatever the binary sum of the readings comes to", () => {
    // A test that only ever met means that binary sums give exactly would prove nothing.
    const noisy = CASES.filter(
      ({ readings, mean }) => readings.reduce((sum, value) => sum + value, 0) / readings.length !== mean,
    );
    expect(noisy.length).toBeGreaterThan(200);
    for (const { readings, mean } of CASES) {
      expect(verdict(readings, mean, null), `${readings} from ${mean}`).not.toMatch(/too soft/);
      expect(verdict(readings, null, mean), `${readings} to ${mean}`).not.toMatch(/too hard/);
      expect(verdict(readings, mean, mean), `${readings} at ${mean}`).not.toMatch(/too/);
    }
  });

  test("is outside a limit that lies one step of the tester further in", () => {
    for (const { readings, mean, step } of CASES) {
      const [over, under] = [Number((mean + step).toFixed(4)), Number((mean - step).toFixed(4))];
      expect(verdict(readings, over, null), `${readings} from ${over}`).toMatch(/too soft: mean under/);
      expect(verdict(readings, null, under), `${readings} to ${under}`).toMatch(/too hard: mean over/);
    }
  });

  test("a mean a third of a step outside is outside", () => {
    // 60.0, 60.0, 60.1: 60.0333; 60.0, 60.1, 60.1: 60.0667.
    expect(verdict([60, 60, 60.1], null, 60)).toMatch(/too hard/);
    expect(verdict([60, 60.1, 60.1], 60.1, null)).toMatch(/too soft/);
  });
});
