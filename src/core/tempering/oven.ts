import { differenceText, temperatureText } from "../quantity-text";
import { InvalidValue, NotAvailable } from "../refusal";
import { relation } from "../relation";

/** A setting of an oven and what a thermometer beside the blade then read, °C. */
export interface OvenCheck {
  /** Setting of the oven [°C]. */
  readonly setC: number;
  /** What the thermometer read then [°C]. */
  readonly measuredC: number;
}

/** Correction of an oven's dial. */
export const OVEN_CORRECTION = relation({
  title: "Setting of an oven for a temperature beside the blade",
  source: "common",
  locator: "straight lines between the shop's own checks, the nearest error beyond them",
  evidence: "common practice",
  inputs: { beyond: { label: "distance to the nearest check", unit: "°C", min: 0, max: 50 } },
  output: { label: "setting", unit: "°C" },
  error: {
    size: null,
    unit: "°C",
    kind: "as good as the thermometer and the checks; ovens swing about their setting",
  },
});

/** An error of the dial beyond this is a fault of the oven or of the thermometer, °C. */
const MAX_ERROR_C = 80;
const MAX_BEYOND_C = 50;

function checkPair({ setC, measuredC }: OvenCheck): void {
  if (Math.abs(setC - measuredC) <= MAX_ERROR_C) return;
  throw new InvalidValue(
    `set ${temperatureText(setC)} and measured ${temperatureText(measuredC)} are more than ${differenceText(MAX_ERROR_C)} apart: ` +
      "check that both are in the same scale, and the thermometer",
  );
}

function checkRising(checks: readonly OvenCheck[]): void {
  checks.slice(1).forEach((check, i) => {
    const before = checks[i] as OvenCheck;
    if (check.measuredC > before.measuredC && check.setC > before.setC) return;
    throw new InvalidValue(
      `the checks contradict each other: set ${temperatureText(before.setC)} measured ${temperatureText(before.measuredC)}, ` +
        `set ${temperatureText(check.setC)} measured ${temperatureText(check.measuredC)}; a hotter setting must read hotter`,
    );
  });
}

function beyond(nearest: OvenCheck, wantedC: number): number {
  if (Math.abs(wantedC - nearest.measuredC) <= MAX_BEYOND_C)
    return wantedC + nearest.setC - nearest.measuredC;
  throw new NotAvailable(
    `${temperatureText(wantedC)} is more than ${differenceText(MAX_BEYOND_C)} from the nearest check, ` +
      `${temperatureText(nearest.measuredC)}: measure the oven nearer to it`,
  );
}

/**
 * Setting of an oven for a wanted temperature, from checks of it with a thermometer.
 *
 * @param wantedC - Temperature wanted beside the blade [°C]
 * @param checks - One or more settings with what was measured, in any order [°C]
 * @returns Setting [°C]
 * @throws NotAvailable more than 50 °C from the nearest check; InvalidValue for checks that cannot be.
 * Error and source: {@link OVEN_CORRECTION}.
 */
export function ovenSetting(wantedC: number, checks: readonly OvenCheck[]): number {
  const sorted = [...checks].sort((a, b) => a.measuredC - b.measuredC);
  for (const check of sorted) checkPair(check);
  checkRising(sorted);
  const above = sorted.findIndex(({ measuredC }) => measuredC >= wantedC);
  const right = sorted[above === -1 ? sorted.length - 1 : above];
  const left = sorted[above - 1];
  if (right === undefined)
    throw new InvalidValue("no check of the oven was given: a setting and what it measured");
  if (left === undefined) return beyond(right, wantedC);
  const share = (wantedC - left.measuredC) / (right.measuredC - left.measuredC);
  return left.setC + share * (right.setC - left.setC);
}
