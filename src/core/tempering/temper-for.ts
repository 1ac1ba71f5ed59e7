import { withinWords } from "../cell-text";
import { quantityText, temperatureText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { HALF_HRC, likelyTemper, planFor, type TemperPlan, targetQuestion } from "./temper-plan";
import type { Treatment } from "./tempered";

/** Why the plan for a target gives no temper that hits it. */
function whyNone({ likelyC, flag, caution }: TemperPlan): string {
  if (likelyC === null) return caution;
  return withinWords([`${flag}, the nearest is ${temperatureText(likelyC)}`, ...caution.split("; ")]);
}

/**
 * The temper that gives a hardness: the likely one of the plan for it, so that the two never differ.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param targetHrc - Wanted hardness [HRC]
 * @param treatment - Time of one cycle [h], cycles, and what is known of the blade.
 * @returns 150 or more, within the published range; for a target that the curve misses by half an HRC at most the
 *   usual temper that comes nearest [°C]
 * @throws NotAvailable where the target is out of reach or at the limit (with the highest or lowest there is, and the
 *   nearest temper), where two tempers give it (naming both), and as `temperedHardness` does.
 * Error and source: {@link COMPOSITION_FORMULA} or the grade's own curve; {@link HOLLOMON_JAFFE}.
 */
export function temperFor(steel: SteelAsked, targetHrc: number, treatment: Treatment = {}): number {
  steel = steelAsked(steel);
  const question = targetQuestion(steel, targetHrc, treatment);
  const { likelyC, missesBy, otherC } = likelyTemper(question);
  // A cell holds one figure and no flag: one that misses the target would pass for an answer.
  if (likelyC === null || missesBy > HALF_HRC) throw new NotAvailable(whyNone(planFor(question)));
  if (otherC === null) return likelyC;
  throw new NotAvailable(
    `${quantityText(targetHrc, "HRC")} has more than one temper in ${steel.name}: ${temperatureText(likelyC)} and ` +
      `${temperatureText(otherC)}; TEMPER_PLAN says which way to lean`,
  );
}
