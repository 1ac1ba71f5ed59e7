import { usualHardening } from "../hardening/hardening-temperature";
import { publishedTreatment } from "../hardening/heat-treatment";
import type { QuenchMedium } from "../hardening/quench-media";
import { temperatureText } from "../quantity-text";
import type { Steel } from "../steel/steel";

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
  if (low === null || high === null) {
    return `harden about ${temperatureText(usualHardening(steel).celsius)}, no published window`;
  }
  return low === high
    ? `harden ${temperatureText(low)}`
    : `harden ${temperatureText(low)} to ${temperatureText(high)}`;
}

/**
 * The recipe of a line in words. Lines whose recipes read the same may share a load: same family of
 * steel, same hardening window, same quench, same temper.
 */
export function recipeText(question: RecipeQuestion): string {
  const { steel, quench, temperC } = question;
  const parts = [steel.family, hardenText(question)];
  if (quench !== undefined) parts.push(quench.word);
  if (temperC !== undefined) parts.push(`temper ${temperatureText(temperC)}`);
  return parts.join(", ");
}
