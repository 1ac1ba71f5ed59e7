import { quantityText, temperatureText } from "../quantity-text";
import { InvalidValue, NotAvailable } from "../refusal";
import { crossings } from "./curve";
import { hollomonJaffe, temperAtParameter } from "./hollomon-jaffe";
import type { TemperModel } from "./model";
import { checkHours, temperSpan } from "./temper-limits";

/** The coolest temper that is ever advised, °C: below it quenching stress stays in the blade. */
export const COOLEST_TEMPER_C = 150;

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

/** The usual temper, whole °C from a coolest one up, whose hardness on the curve comes nearest to one [HRC]; of equals the coolest. */
export function nearestUsual(model: TemperModel, hrc: number, hours: number, fromC = 0): number {
  const [coolest, hottest] = temperSpanFor(model, hours);
  const from = Math.ceil(Math.max(coolest, fromC));
  let [nearest, least] = [from, Number.POSITIVE_INFINITY];
  for (let celsius = from; celsius === from || celsius <= hottest; celsius += 1) {
    const off = Math.abs(model.curve.hrcAt(hollomonJaffe(celsius, hours)) - hrc);
    if (off < least) [nearest, least] = [celsius, off];
  }
  return nearest;
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
