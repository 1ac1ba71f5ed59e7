import { quantityText } from "./quantity-text";
import { InvalidValue } from "./refusal";

/** What is sensible for a figure: beyond these limits it is a slip. A published range belongs into a relation. */
export interface FigureLimits {
  readonly unit: string;
  readonly min?: number;
  readonly max?: number;
  /** Exclusive lower limit. */
  readonly above?: number;
  readonly whole?: boolean;
}

/** The limits in words: "above 0 mm up to 30000 mm". */
export function limitsText({ min, max, above, unit }: FigureLimits): string {
  const low = above === undefined ? min : above;
  const word = above === undefined ? "from" : "above";
  const parts = [
    low === undefined ? "" : `${word} ${quantityText(low, unit)}`,
    max === undefined ? "" : `up to ${quantityText(max, unit)}`,
  ].filter((part) => part !== "");
  return parts.join(" ");
}

/** True for a figure within the limits. */
export function isWithinLimits(value: number, { min, max, above, whole }: FigureLimits): boolean {
  if (above !== undefined && value <= above) return false;
  if (min !== undefined && value < min) return false;
  if (max !== undefined && value > max) return false;
  return !whole || Number.isInteger(value);
}

function givenText(value: unknown, unit: string): string {
  if (typeof value === "number") return Number.isNaN(value) ? "no number" : quantityText(value, unit);
  if (typeof value === "string") return `"${value.slice(0, 40)}"`;
  return value === undefined || value === null ? "nothing" : "no number";
}

/**
 * Refuses what is no figure (NaN, a text, nothing) and a figure outside its limits.
 *
 * @param value - As given, in the unit of its limits.
 * @param name - What a sentence calls it: "length".
 * @throws InvalidValue naming the figure, what was given and what is accepted.
 */
export function checkFigure(value: number, name: string, limits: FigureLimits): void {
  if (Number.isFinite(value) && isWithinLimits(value, limits)) return;
  const noun = limits.whole ? "a whole number" : "a number";
  const unit = limits.unit === "" ? "" : ` in ${limits.unit}`;
  const span = limitsText(limits);
  throw new InvalidValue(
    `${name}: ${givenText(value, limits.unit)} given; give ${noun}${unit}${span === "" ? "" : `, ${span}`}`,
  );
}

/** Above 0. */
export function positive(value: number, name: string, unit: string): void {
  checkFigure(value, name, { unit, above: 0 });
}
