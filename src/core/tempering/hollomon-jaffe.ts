import { quantityText, temperatureText } from "../quantity-text";
import { InvalidValue, NotAvailable } from "../refusal";
import { checkRange, relation } from "../relation";

const ZERO_CELSIUS_K = 273.15;

/** Constant for hours; one figure for every steel costs under 0.2 HRC in the range of blades. */
const HOLLOMON_JAFFE_C = 18;

/** Time and temperature folded into one figure. */
export const HOLLOMON_JAFFE = relation({
  title: "Time and temperature of a temper as one parameter",
  source: "hollomon-jaffe-1945",
  locator: "T (c + log t), with c = 18 for hours",
  evidence: "fitted",
  inputs: {
    temperC: { label: "temper", unit: "°C", min: 100, max: 704 },
    hours: { label: "time", unit: "h", min: 0.25, max: 32 },
  },
  output: { label: "parameter", unit: "thousand kelvin" },
  error: {
    size: 0.2,
    unit: "HRC",
    kind: "cost of one constant for all steels, 145 to 430 °C (293 to 806 °F)",
  },
  note: "Cycles add as time. What turns in retained austenite between cycles is not counted.",
});

/**
 * The temper as one parameter.
 *
 * @param celsius - Temper in °C.
 * @param hours - Total time in h.
 * @returns T (18 + log10 h) / 1000, T in kelvin.
 */
export function hollomonJaffe(celsius: number, hours: number): number {
  return ((celsius + ZERO_CELSIUS_K) * (HOLLOMON_JAFFE_C + Math.log10(hours))) / 1000;
}

/** The temper in °C that gives a parameter in a number of hours. */
export function temperAtParameter(parameter: number, hours: number): number {
  return (1000 * parameter) / (HOLLOMON_JAFFE_C + Math.log10(hours)) - ZERO_CELSIUS_K;
}

/** The time in h that gives a parameter at a temper in °C. */
export function hoursAtParameter(parameter: number, celsius: number): number {
  return 10 ** ((1000 * parameter) / (celsius + ZERO_CELSIUS_K) - HOLLOMON_JAFFE_C);
}

/**
 * The temper that softens as much in another time.
 *
 * @param celsius - Temper, 100 to 704 [°C]
 * @param hours - Its time, 0.25 to 32 [h]
 * @param newHours - The other time, 0.25 to 32 [h]
 * @returns [°C]
 * Limits: none are checked here; they are those of the relation, held by `checkParameterRange`.
 * Error and source: {@link HOLLOMON_JAFFE}.
 */
export function equivalentTemperature(celsius: number, hours: number, newHours: number): number {
  return temperAtParameter(hollomonJaffe(celsius, hours), newHours);
}

/** Shortest hold of the measured series, and a hold nobody makes, h. */
const SHORTEST_H = 10 / 3600;
const LONGEST_H = 1000;

/** Refuses a time or a temper that the parameter was not shown to cover. */
export function checkParameterRange(celsius: number, hours: number): void {
  checkRange(HOLLOMON_JAFFE, "temperC", celsius);
  checkRange(HOLLOMON_JAFFE, "hours", hours);
}

/** Holds at one temper are one hold as long as all of them: cycles add as time. */
function holdsByTemper(
  tempers: readonly { readonly celsius: number; readonly hours: number }[],
): (readonly [celsius: number, hours: number])[] {
  const times = new Map<number, number>();
  for (const { celsius, hours } of tempers) times.set(celsius, (times.get(celsius) ?? 0) + hours);
  return [...times];
}

/**
 * Several tempers as the time at one temperature that softens as much.
 *
 * @param tempers - Temper [°C] and time [h] of each.
 * @param referenceC - The temperature that counts, 100 to 704 [°C]
 * @returns Time there that softens as much as all of them together, 10 s to 1000 h [h]
 * @throws NotAvailable outside the measured times and tempers, and where the answer means nothing.
 * Error and source: {@link HOLLOMON_JAFFE}.
 */
export function equivalentTime(
  tempers: readonly { readonly celsius: number; readonly hours: number }[],
  referenceC: number,
): number {
  for (const { celsius, hours } of tempers) checkParameterRange(celsius, hours);
  checkRange(HOLLOMON_JAFFE, "temperC", referenceC);
  const total = holdsByTemper(tempers).reduce(
    (sum, [celsius, hours]) => sum + hoursAtParameter(hollomonJaffe(celsius, hours), referenceC),
    0,
  );
  if (total >= SHORTEST_H && total <= LONGEST_H) return total;
  const side = total < SHORTEST_H ? "under 10 seconds" : `over ${LONGEST_H} h`;
  throw new NotAvailable(
    `the tempers come to ${side} at ${temperatureText(referenceC)}: choose a reference temperature nearer to theirs`,
  );
}

/** A temper of which nothing else is said: one cycle of this time [h]. */
export const USUAL_HOURS = 2;
export const USUAL_CYCLES = 1;

/**
 * Tempers that a blade is ordered with where its plan names no number: common practice, no source. What is asked of a
 * temper without a number counts {@link USUAL_CYCLES}, as published rows do.
 */
export const ORDERED_CYCLES = 2;

/**
 * Total time of equal cycles.
 *
 * @param hours - Time of one cycle in h, more than 0; 2 where left out.
 * @param cycles - Number of cycles, whole, 1 or more; 1 where left out.
 * @returns Hours in all.
 * @throws InvalidValue for a time or a count that cannot be.
 */
export function totalHours(hours = USUAL_HOURS, cycles = USUAL_CYCLES): number {
  if (!(hours > 0) || hours === Number.POSITIVE_INFINITY) {
    throw new InvalidValue(`time ${quantityText(hours, "h")} must be more than 0 h`);
  }
  if (!(cycles >= 1) || !Number.isInteger(cycles)) {
    throw new InvalidValue(`${cycles} temper cycles given: it must be a whole number, 1 or more`);
  }
  return hours * cycles;
}

/** Refuses a temper that is no number. */
export function checkTemperNumber(celsius: number): void {
  if (!Number.isFinite(celsius)) throw new InvalidValue("temper must be a number in °C");
  if (celsius <= -ZERO_CELSIUS_K)
    throw new InvalidValue(`temper ${temperatureText(celsius)} is below absolute zero`);
}
