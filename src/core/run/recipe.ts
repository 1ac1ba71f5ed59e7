import { publishedTreatment } from "../hardening/heat-treatment";
import type { QuenchMedium } from "../hardening/quench-media";
import { temperatureText } from "../quantity-text";
import { relation } from "../relation";
import type { Steel } from "../steel/steel";
import { isUnavoidable } from "../tempering/embrittlement";

/** Lines that may share a load. */
export const RECIPE_RULE = relation({
  title: "What may share a furnace load",
  source: "common",
  locator: "same family of steel, same published hardening window, same quench, same temper",
  evidence: "common practice",
  inputs: {},
  output: { label: "recipe", unit: "text" },
  error: {
    size: null,
    unit: "",
    kind: "a rule of the shop; two heats of one grade may still want different tempers: test a coupon",
  },
});

/** What decides whether two lines may share a furnace load. */
export interface RecipeQuestion {
  readonly steel: Steel;
  readonly quench: QuenchMedium | undefined;
  /** °C; the published window of the steel where left out. */
  readonly hardenC: number | undefined;
  /** °C, whole degrees; `undefined` where the temper is not known. */
  readonly temperC: number | undefined;
}

function hardenText({ steel, hardenC }: RecipeQuestion): string {
  if (hardenC !== undefined) return `harden ${temperatureText(hardenC)}`;
  const { low = null, high = null } = publishedTreatment(steel)?.harden ?? {};
  // A hardening temperature that nobody published is no recipe.
  if (low === null || high === null) return `harden as the steelmaker's sheet of ${steel.name} says`;
  return low === high
    ? `harden ${temperatureText(low)}`
    : `harden ${temperatureText(low)} to ${temperatureText(high)}`;
}

/** The temper as whoever stands at the oven has to know it. */
function temperText(steel: Steel, celsius: number): string {
  const brittle = isUnavoidable(steel, celsius) ? ", in its brittle range" : "";
  return `temper ${temperatureText(celsius)}${brittle}`;
}

/**
 * The recipe of a line in words. Lines whose recipes read the same may share a load: same family of
 * steel, same hardening window, same quench, same temper.
 */
export function recipeText(question: RecipeQuestion): string {
  const { steel, quench, temperC } = question;
  const parts = [steel.family, hardenText(question)];
  if (quench !== undefined) parts.push(quench.word);
  if (temperC !== undefined) parts.push(temperText(steel, temperC));
  return parts.join(", ");
}
