import { numberText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { relation } from "../relation";

/** The rule by which readings of one blade are judged. */
export const READING_RULE = relation({
  title: "Mean against the limits; readings more than 2 HRC apart are doubtful",
  source: "common",
  locator: "hardness test plan",
  evidence: "common practice",
  inputs: {},
  output: { label: "verdict", unit: "" },
  error: {
    size: 1,
    unit: "HRC",
    kind: "difference between two good testers; a mean this near a limit is doubtful",
  },
  note: "Leave the seating reading out. Capability needs about 30 readings to mean much.",
});

export interface ReadingSummary {
  /** Readings taken [-]. */
  readonly count: number;
  /** Of the readings [HRC]. */
  readonly mean: number;
  /** Highest less lowest [HRC]. */
  readonly range: number;
  /** Standard deviation of the sample, with n - 1 [HRC]; `undefined` for one reading. */
  readonly deviation: number | undefined;
  /** Nearer limit in units of three standard deviations [-]; `undefined` without limits or scatter. */
  readonly capability: number | undefined;
  /** How the readings stand against the limits, one sentence. */
  readonly verdict: string;
}

const SPREAD_HRC = 2;
const FEW = 3;

interface Limits {
  readonly low: number | undefined;
  readonly high: number | undefined;
}

/** Beyond so many places a figure is no reading but the noise of a calculation. */
const MAX_PLACES = 6;

/** How many decimal places a figure is written with. */
function placesOf(value: number): number {
  const [, decimals = ""] = String(Number(value.toFixed(MAX_PLACES))).split(".");
  return decimals.length;
}

/**
 * The mean, from a sum in whole steps of the readings' last place: a mean that lies on a limit is on it, where sums of
 * decimals in binary fall to either side.
 */
function meanOf(readings: readonly number[]): number {
  const scale = 10 ** Math.max(...readings.map(placesOf));
  const steps = readings.reduce((sum, value) => sum + Math.round(value * scale), 0);
  return steps / (scale * readings.length);
}

function deviationOf(readings: readonly number[], mean: number): number | undefined {
  if (readings.length < 2) return undefined;
  const squares = readings.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / (readings.length - 1));
}

function capabilityOf(
  mean: number,
  deviation: number | undefined,
  { low, high }: Limits,
): number | undefined {
  if (deviation === undefined || deviation === 0) return undefined;
  const margins = [low === undefined ? [] : [mean - low], high === undefined ? [] : [high - mean]].flat();
  return margins.length === 0 ? undefined : Math.min(...margins) / (3 * deviation);
}

/** What the mean says, most serious first. */
function placeOf(readings: readonly number[], mean: number, { low, high }: Limits): string {
  if (low === undefined && high === undefined) return "no limits given";
  if (low !== undefined && mean < low) return `too soft: mean under ${numberText(low)} HRC`;
  if (high !== undefined && mean > high) return `too hard: mean over ${numberText(high)} HRC`;
  const outside = readings.filter((value) => value < (low ?? value) || value > (high ?? value)).length;
  return outside > 0
    ? `uncertain: ${outside} of ${readings.length} readings outside the limits`
    : "inside the limits";
}

function verdictOf(readings: readonly number[], mean: number, range: number, limits: Limits): string {
  const parts = [placeOf(readings, mean, limits)];
  if (range > SPREAD_HRC) {
    parts.push(`readings ${numberText(Number(range.toFixed(2)))} HRC apart: clean the spot and test again`);
  }
  if (readings.length < FEW) parts.push("fewer than three readings");
  return parts.join("; ");
}

/**
 * Sums up hardness readings of a blade or a lot.
 *
 * @param readings - At least one [HRC]
 * @param low - Lower limit, if any [HRC]
 * @param high - Upper limit, if any [HRC]
 * @returns Mean, range, standard deviation [HRC], capability and verdict.
 * @throws InvalidValue without readings or with the limits the wrong way round.
 * Error and source: {@link READING_RULE}.
 */
export function summariseReadings(readings: readonly number[], low?: number, high?: number): ReadingSummary {
  if (readings.length === 0)
    throw new InvalidValue("no readings: give a range that holds at least one, in HRC");
  if (low !== undefined && high !== undefined && low > high) {
    throw new InvalidValue(`low ${numberText(low)} HRC is above high ${numberText(high)} HRC`);
  }
  const mean = meanOf(readings);
  const spread = readings.reduce((a, b) => Math.max(a, b)) - readings.reduce((a, b) => Math.min(a, b));
  const range = Number(spread.toFixed(MAX_PLACES));
  const deviation = deviationOf(readings, mean);
  const limits = { low, high };
  return {
    count: readings.length,
    mean,
    range,
    deviation,
    capability: capabilityOf(mean, deviation, limits),
    verdict: verdictOf(readings, mean, range, limits),
  };
}
