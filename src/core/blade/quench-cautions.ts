import type { QuenchMedium } from "../hardening/quench-media";
import { attemptOr } from "../refusal";
import type { Steel } from "../steel/steel";
import { type Caution, caution } from "./caution";
import { type SteelKind, steelKind } from "./steel-kind";

const PLAIN: readonly (SteelKind | null)[] = ["medium carbon", "plain high carbon"];

function shallowCaution(steel: Steel, kind: SteelKind | null): Caution[] {
  if (kind !== "plain high carbon") return [];
  const full = `${steel.name} hardens shallow and leaves little room for error in the quench.`;
  return [caution("note", "hardens shallow: no room for error in the quench", full)];
}

/** Whether the bath itself is too fierce for the steel. */
export function bathCaution(steel: Steel, quench: QuenchMedium | undefined): Caution[] {
  if (quench?.kind !== "water") return [];
  const kind = attemptOr(null, () => steelKind(steel));
  if (!PLAIN.includes(kind)) {
    const full = `${steel.name} is likely to crack in ${quench.word}: use oil.`;
    return [caution("spoils the blade", `likely to crack in ${quench.word}: use oil`, full)];
  }
  if (kind !== "plain high carbon") return [];
  const full = `${quench.word} cracks some blades of ${steel.name}: allow for losses in the number started.`;
  return [caution("spoils the blade", `${quench.word} cracks some blades: start more`, full)];
}

/**
 * What the trade would say about a quench for a steel.
 *
 * @param steel - The steel of the blade.
 * @param quench - The medium, where it is known.
 */
export function quenchCautions(steel: Steel, quench: QuenchMedium | undefined): Caution[] {
  // Where the grade does not fix its carbon, the caution on the steel itself says so.
  const kind = attemptOr(null, () => steelKind(steel));
  return [...shallowCaution(steel, kind), ...bathCaution(steel, quench)];
}
