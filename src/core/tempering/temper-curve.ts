import { numberText, temperatureText } from "../quantity-text";
import { InvalidValue, NotAvailable } from "../refusal";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { hollomonJaffe, totalHours } from "./hollomon-jaffe";
import { checkHours, refuseTemper, temperSpan } from "./temper-limits";
import { hardnessIn } from "./tempered";
import { bandTop } from "./tempered-range";
import { temperModel } from "./tempering-model";

/** One point of a curve: °C and HRC. */
export type CurvePoint = readonly [celsius: number, low: number, likely: number, high: number];

/** Where a curve starts and ends and how far apart its points are, °C. */
export interface CurveSpan {
  /** Coolest temper; left out, 150, or where the published range starts [°C]. */
  readonly from?: number | undefined;
  /** Hottest temper; left out, 425, or where the published range ends [°C]. */
  readonly to?: number | undefined;
  /** Between two points, above 0 [°C]. */
  readonly step: number;
}

const USUAL_SPAN = [150, 425] as const;
const MAX_POINTS = 1000;

function points(from: number, to: number, step: number): number[] {
  const count = Math.floor((to - from) / step + 1e-9) + 1;
  if (count > MAX_POINTS) {
    throw new InvalidValue(
      `step C: ${numberText(step)} given, too many points for a curve: ${MAX_POINTS} at most, so give a larger step`,
    );
  }
  return Array.from({ length: count }, (_, i) => from + i * step);
}

/**
 * Hardness over a span of tempers with the band that covers 90 %.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param span - Ends and step [°C]
 * @param hours - Time in all [h]
 * @returns A point a step, temper rising: temper [°C], low, likely and high [HRC]
 * @throws NotAvailable where an end that was given lies outside the published range.
 * Error and source: {@link COMPOSITION_FORMULA} or the grade's own curve, as the band says.
 */
export function temperCurve(steel: SteelAsked, span: CurveSpan, hours: number): CurvePoint[] {
  steel = steelAsked(steel);
  const model = temperModel(steel);
  checkHours(model, totalHours(hours, 1));
  const [least, most] = temperSpan(model, hours);
  const from = span.from ?? Math.max(USUAL_SPAN[0], Math.ceil(least));
  const to = span.to ?? Math.min(USUAL_SPAN[1], Math.floor(most));
  if (span.from !== undefined && (from < least || from > most)) refuseTemper(model, from, hours);
  if (span.to !== undefined && (to < least || to > most)) refuseTemper(model, to, hours);
  if (from > to) {
    throw new NotAvailable(
      `a curve from ${temperatureText(from)} to ${temperatureText(to)} is empty: the published range of ${steel.name} is ` +
        `${temperatureText(least)} to ${temperatureText(most)}`,
    );
  }
  return points(from, to, span.step).map((celsius) => {
    const likely = hardnessIn(model, celsius, hours);
    const halfWidth = model.halfWidthAt(celsius, hollomonJaffe(celsius, hours));
    return [
      celsius,
      likely - halfWidth,
      likely,
      bandTop(model, celsius, hours, { likely, shift: 0, halfWidth }),
    ];
  });
}
