import { attemptOr } from "../../core/refusal";
import { textLiteral } from "../../formula/tokens";
import { parseMeasure } from "../../functions/measure";
import { typed } from "../parts/words";

/** A temper as typed. */
export interface Recipe {
  readonly steel: string;
  readonly temper: string;
  readonly hours: string;
  readonly cycles: string;
  readonly target: string;
}

/** A call of a tempering function whose second argument is its own. */
export function recipeCall(name: string, { steel, hours, cycles }: Recipe, second: string): string {
  return `=BLADE.${name}(${[textLiteral(steel), second, typed(hours), typed(cycles)].join(",")})`;
}

/** The temper typed, °C; `undefined` where it is no temperature. */
export function temperOf({ temper }: Recipe): number | undefined {
  return attemptOr(undefined, () => parseMeasure(temper, "temperature", "°C"));
}

/**
 * Hours of all cycles together; 2 h and one cycle where left out, as in the functions.
 *
 * @throws Refusal for a time or a count that cannot be read.
 */
export function allHours({ hours, cycles }: Recipe): number {
  const each = hours === "" ? 2 : parseMeasure(hours, "time", "h");
  return each * (cycles === "" ? 1 : parseMeasure(cycles, "count", ""));
}
