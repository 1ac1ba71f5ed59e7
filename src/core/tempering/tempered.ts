import { celsiusOf, isUsualFahrenheit, numberText, quantityText, temperatureText } from "../quantity-text";
import { InvalidValue, NotAvailable } from "../refusal";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { checkTemperNumber, hollomonJaffe, totalHours } from "./hollomon-jaffe";
import type { TemperModel } from "./model";
import { inRange, refuseTemper } from "./temper-limits";
import { temperModel } from "./tempering-model";

/** A coupon or blade of the same steel and heat treatment, and what it read. */
export interface KnownTemper {
  /** Temper that it had [°C]. */
  readonly celsius: number;
  /** What it read after it [HRC]. */
  readonly hrc: number;
}

/** How a blade was treated. */
export interface Treatment {
  /** Time of one cycle, above 0; 2 where left out [h]. */
  readonly hours?: number | undefined;
  /** Number of equal tempers, whole, 1 and more; 1 where left out [-]. */
  readonly cycles?: number | undefined;
  /** A known temper of the same time and its reading. */
  readonly known?: KnownTemper | undefined;
  /** Hardening temperature [°C]. */
  readonly hardenC?: number | undefined;
  /** Coldest temperature straight after the quench [°C]; left out, room temperature. */
  readonly quenchToC?: number | undefined;
}

/** A treatment as it is asked for: the known temper as two figures that may each be left out. */
export interface TreatmentAsked {
  /** Time of one cycle [h] */
  readonly hours: number;
  readonly cycles: number;
  /** [°C] */
  readonly knownC: number | undefined;
  /** [HRC] */
  readonly knownHrc: number | undefined;
  /** [°C] */
  readonly hardenC: number | undefined;
  /** [°C] */
  readonly quenchToC?: number | undefined;
}

function knownOf({ knownC, knownHrc }: TreatmentAsked): KnownTemper | undefined {
  if (knownC === undefined && knownHrc === undefined) return undefined;
  if (knownHrc === undefined) throw new InvalidValue("known HRC: a known temper needs its reading in HRC");
  if (knownC === undefined)
    throw new InvalidValue("known C: a reading needs the temper that it was taken after, in °C");
  return { celsius: knownC, hrc: knownHrc };
}

/**
 * The treatment that is asked for.
 *
 * @throws InvalidValue for one half of a known temper.
 */
export function treatmentOf(asked: TreatmentAsked): Treatment {
  const { hours, cycles, hardenC, quenchToC } = asked;
  return { hours, cycles, known: knownOf(asked), hardenC, quenchToC };
}

/** A reading farther from the published curve than this does not come from a blade that hardened through. */
const MAX_SHIFT_HRC = 3;

function checkReading(hrc: number): void {
  if (Number.isFinite(hrc) && hrc >= 20 && hrc <= 68) return;
  throw new InvalidValue(`known reading ${numberText(hrc)} HRC given; the C scale runs from 20 to 68 HRC`);
}

/** HRC of a model at a temper; refuses outside the published range. */
export function hardnessIn(model: TemperModel, celsius: number, hours: number): number {
  const parameter = hollomonJaffe(celsius, hours);
  if (inRange(model, celsius, hours, parameter)) return model.curve.hrcAt(parameter);
  checkTemperNumber(celsius);
  return refuseTemper(model, celsius, hours);
}

/** Says where a reading fits its temper read as °F; empty where it does not. */
function fahrenheitText(model: TemperModel, { celsius, hrc }: KnownTemper, hours: number): string {
  const meant = celsiusOf(celsius);
  if (!isUsualFahrenheit(celsius)) return "";
  if (!inRange(model, meant, hours, hollomonJaffe(meant, hours))) return "";
  if (Math.abs(hrc - model.curve.hrcAt(hollomonJaffe(meant, hours))) > MAX_SHIFT_HRC) return "";
  const figure = numberText(celsius);
  return (
    `${quantityText(hrc, "HRC")} does not go with ${temperatureText(celsius)} but with ${temperatureText(meant)}: ` +
    `write "${figure}F" if ${figure} °F was meant`
  );
}

/** How far a reading may lie off the published curve [HRC]: 3, or the stated error where that is wider. */
export function largestShift(model: TemperModel, celsius: number, hours: number): number {
  return Math.max(MAX_SHIFT_HRC, model.halfWidthAt(celsius, hollomonJaffe(celsius, hours)));
}

/**
 * How far a known reading lies above the published curve.
 *
 * @returns HRC, 0 without a reading.
 * @throws NotAvailable beyond `largestShift`: the coupon did not harden as assumed.
 */
export function readingShift(model: TemperModel, known: KnownTemper | undefined, hours: number): number {
  if (known === undefined) return 0;
  checkReading(known.hrc);
  const expected = hardnessIn(model, known.celsius, hours);
  const shift = known.hrc - expected;
  if (Math.abs(shift) <= largestShift(model, known.celsius, hours)) return shift;
  const asFahrenheit = fahrenheitText(model, known, hours);
  if (asFahrenheit !== "") throw new NotAvailable(asFahrenheit);
  const side = shift > 0 ? "over" : "under";
  throw new NotAvailable(
    `a reading of ${quantityText(known.hrc, "HRC")} after ${temperatureText(known.celsius)} is ` +
      `${Math.abs(shift).toFixed(1)} HRC ${side} the ${expected.toFixed(1)} HRC published for ${model.steel.name}: ` +
      "the coupon did not harden as assumed: check section, quench, decarburised skin; do not temper lower",
  );
}

/**
 * Hardness after temper of a blade that hardened through.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param temperC - Temper of the steel itself [°C]
 * @param treatment - Time of one cycle [h], cycles, and what is known of the blade.
 * @returns [HRC]
 * @throws NotAvailable outside the published range, without curve or formula, and where a known
 *   reading lies more than 3 HRC off.
 * Error and source: {@link COMPOSITION_FORMULA} or the grade's own curve; {@link HOLLOMON_JAFFE}.
 */
export function temperedHardness(steel: SteelAsked, temperC: number, treatment: Treatment = {}): number {
  steel = steelAsked(steel);
  const model = temperModel(steel, treatment.hardenC, treatment.quenchToC);
  const hours = totalHours(treatment.hours, treatment.cycles);
  return hardnessIn(model, temperC, hours) + readingShift(model, treatment.known, hours);
}
