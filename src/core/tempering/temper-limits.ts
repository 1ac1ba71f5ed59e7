import { LOWER_CRITICAL, lowerCritical } from "../hardening/critical";
import { quantityText, temperatureText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import { sourceText } from "../sources";
import { temperAtParameter } from "./hollomon-jaffe";
import type { TemperModel } from "./model";

/** Whether a temper lies in the published range of a model. */
export function inRange(model: TemperModel, celsius: number, hours: number, parameter: number): boolean {
  return (
    celsius >= model.minC &&
    celsius <= model.maxC &&
    hours >= model.minHours &&
    hours <= model.maxHours &&
    parameter >= model.curve.from &&
    parameter <= model.curve.to
  );
}

/** Coolest and hottest temper of a model for a total time, °C. */
export function temperSpan(model: TemperModel, hours: number): readonly [least: number, most: number] {
  return [
    Math.max(model.minC, temperAtParameter(model.curve.from, hours)),
    Math.min(model.maxC, temperAtParameter(model.curve.to, hours)),
  ];
}

/** The whole degrees within a span of tempers [°C]: what is said of a published range, and what an oven is set to. */
export function wholeDegrees([least, most]: readonly [number, number]): readonly [
  least: number,
  most: number,
] {
  return [Math.ceil(least), Math.floor(most)];
}

/** Refuses a total time outside the published range. */
export function checkHours(model: TemperModel, hours: number): void {
  if (hours >= model.minHours && hours <= model.maxHours) return;
  const [least, most] = [model.minHours, model.maxHours].map((limit) => quantityText(limit, "h"));
  throw new NotAvailable(
    `${quantityText(hours, "h")} of temper in all is outside ${least} to ${most}, published for ` +
      `${model.steel.name} (${source(model)})`,
  );
}

/** Above it steel hardens again; the equation holds for lean steels only. */
function refuseAboveCritical({ steel }: TemperModel, celsius: number): void {
  const c = steel.composition;
  if (c.Cr > LOWER_CRITICAL.inputs.Cr.max) return;
  const ac1 = lowerCritical(c);
  if (celsius <= ac1) return;
  throw new NotAvailable(
    `temper ${temperatureText(celsius)} is above the lower critical temperature of ${steel.name}, about ${temperatureText(ac1)}: ` +
      "the steel would start to harden again, not temper",
  );
}

/** Names the range that a temper missed. */
export function refuseTemper(model: TemperModel, celsius: number, hours: number): never {
  checkHours(model, hours);
  refuseAboveCritical(model, celsius);
  const [least, most] = wholeDegrees(temperSpan(model, hours));
  throw new NotAvailable(
    `temper ${temperatureText(celsius)} is outside ${temperatureText(least)} to ` +
      `${temperatureText(most)}, published for ${model.steel.name} and ${quantityText(hours, "h")} in all ` +
      `(${source(model)})`,
  );
}

function source({ relations: [relation] }: TemperModel): string {
  return relation === undefined ? "" : sourceText(relation.source);
}
