import { quantityText, temperatureText } from "../quantity-text";
import { InvalidValue, NotAvailable } from "../refusal";
import type { Steel } from "../steel/steel";
import { crossings, extremes } from "./curve";
import { hollomonJaffe, temperAtParameter, totalHours } from "./hollomon-jaffe";
import type { TemperModel } from "./model";
import { checkHours, temperSpan } from "./temper-limits";
import { readingShift, type Treatment } from "./tempered";
import { temperModel } from "./tempering-model";

/** The coolest temper that is ever advised, °C: below it quenching stress stays in the blade. */
export const COOLEST_TEMPER_C = 150;

/** Two answers nearer than this are one. */
const SAME_TEMPER_C = 0.5;

/** Refuses a target off the C scale. */
export function checkTarget(hrc: number): void {
  if (Number.isFinite(hrc) && hrc >= 20 && hrc <= 68) return;
  throw new InvalidValue(`target ${quantityText(hrc, "HRC")} given; the C scale runs from 20 to 68 HRC`);
}

/** Every temper between 150 °C and the end of the published range that gives a hardness, °C. */
export function tempersFor(model: TemperModel, hrc: number, hours: number): number[] {
  const { from, to } = parameterSpan(model, hours);
  return crossings(model.curve, hrc, from, to).map((parameter) => temperAtParameter(parameter, hours));
}

/** The usual temper, whole °C, whose hardness on the curve comes nearest to one [HRC]; of equals the coolest. */
export function nearestUsual(model: TemperModel, hrc: number, hours: number): number {
  const [coolest, hottest] = temperSpanFor(model, hours);
  const from = Math.ceil(coolest);
  const whole = Array.from({ length: Math.max(1, Math.floor(hottest) - from + 1) }, (_, i) => from + i);
  const off = (celsius: number) => Math.abs(model.curve.hrcAt(hollomonJaffe(celsius, hours)) - hrc);
  return whole.reduce((nearest, each) => (off(each) < off(nearest) ? each : nearest));
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** Coolest and hottest temper that may be advised for a total time, °C. */
export function temperSpanFor(
  model: TemperModel,
  hours: number,
): readonly [coolest: number, hottest: number] {
  checkHours(model, hours);
  const [least, most] = temperSpan(model, hours);
  const coolest = Math.max(COOLEST_TEMPER_C, least);
  if (coolest > most) {
    throw new NotAvailable(
      `no temper from ${temperatureText(COOLEST_TEMPER_C)} up is published for ${model.steel.name} and ` +
        `${quantityText(hours, "h")} in all`,
    );
  }
  return [coolest, most];
}

function parameterSpan(model: TemperModel, hours: number): Span {
  const [coolest, hottest] = temperSpanFor(model, hours);
  return { from: hollomonJaffe(coolest, hours), to: hollomonJaffe(hottest, hours) };
}

function refuseOutOfReach(model: TemperModel, target: number, shift: number, hours: number): never {
  const { from, to } = parameterSpan(model, hours);
  const { lowest, highest } = extremes(model.curve, from, to);
  const [coolest, hottest] = [from, to].map((p) => temperatureText(temperAtParameter(p, hours)));
  const span = `between ${coolest} and ${hottest}, ${quantityText(hours, "h")} in all`;
  const limit =
    target > highest + shift
      ? `the highest is ${(highest + shift).toFixed(1)} HRC`
      : `the lowest is ${(lowest + shift).toFixed(1)} HRC`;
  throw new NotAvailable(
    `${quantityText(target, "HRC")} is out of reach for ${model.steel.name}: ${limit} ${span}`,
  );
}

function refuseSeveral(model: TemperModel, target: number, tempers: readonly number[]): never {
  const [first, last] = [tempers[0] as number, tempers[tempers.length - 1] as number];
  throw new NotAvailable(
    `${quantityText(target, "HRC")} has more than one temper in ${model.steel.name}: ${temperatureText(first)} and ` +
      `${temperatureText(last)}; TEMPER_PLAN says which way to lean`,
  );
}

/**
 * The temper that gives a hardness.
 *
 * @param steel - A grade or an analysis.
 * @param targetHrc - Wanted hardness [HRC]
 * @param treatment - Time of one cycle [h], cycles, and what is known of the blade.
 * @returns 150 or more [°C]
 * @throws NotAvailable where the target is out of reach (with the highest or lowest there is) and
 *   where two tempers give it (naming both), and as `temperedHardness` does.
 * Error and source: {@link COMPOSITION_FORMULA} or the grade's own curve; {@link HOLLOMON_JAFFE}.
 */
export function temperFor(steel: Steel, targetHrc: number, treatment: Treatment): number {
  checkTarget(targetHrc);
  const model = temperModel(steel, treatment.hardenC, treatment.quenchToC);
  const hours = totalHours(treatment.hours, treatment.cycles);
  const shift = readingShift(model, treatment.known, hours);
  const tempers = tempersFor(model, targetHrc - shift, hours);
  const [first] = tempers;
  if (first === undefined) return refuseOutOfReach(model, targetHrc, shift, hours);
  const last = tempers[tempers.length - 1] as number;
  if (last - first > SAME_TEMPER_C) refuseSeveral(model, targetHrc, tempers);
  return first;
}
