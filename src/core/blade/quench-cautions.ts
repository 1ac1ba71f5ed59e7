import {
  CRACK_RANKS,
  type CrackRisk,
  crackRisk,
  NO_CRITERION,
  type Slenderness,
} from "../hardening/crack-risk";
import type { QuenchMedium } from "../hardening/quench-media";
import { asSentence } from "../quantity-text";
import { attemptOr } from "../refusal";
import type { Steel } from "../steel/steel";
import { type Caution, caution } from "./caution";
import { type SteelKind, steelKind } from "./steel-kind";

function shallowCaution(steel: Steel, kind: SteelKind | null): Caution[] {
  if (kind !== "plain high carbon") return [];
  const full = `${steel.name} hardens shallow and leaves little room for error in the quench.`;
  return [caution("note", "hardens shallow: no room for error in the quench", full)];
}

/** What the rank comes to for a blade of the steel, before its reasons. */
function crackWords(
  steel: Steel,
  quench: QuenchMedium,
  { rank }: CrackRisk,
): Pick<Caution, "short" | "full" | "instead"> {
  const bath = quench.word;
  if (rank === "high") {
    return {
      short: `likely to crack in ${bath}: use oil`,
      full: `${steel.name} is likely to crack in ${bath}: use oil`,
      instead: `Quench ${steel.name} in oil: ${bath} is likely to crack it.`,
    };
  }
  if (quench.kind !== "water") {
    const full = `${steel.name} may crack or warp in ${bath}`;
    return { short: `may crack or warp in ${bath}`, full, instead: "" };
  }
  return {
    short: `${bath} cracks some blades: start more`,
    full: `${bath} cracks some blades of ${steel.name}: allow for losses in the number started`,
    instead: "",
  };
}

/** Cracks and warp, where there is something to fear: its rank with the reasons, in one sentence. */
export function bathCaution(
  steel: Steel,
  quench: QuenchMedium | undefined,
  blade: Slenderness = {},
): Caution[] {
  if (quench === undefined) return [];
  const risk = crackRisk(steel, quench, blade);
  if (risk.rank === CRACK_RANKS[0]) return [];
  const { short, full, instead } = crackWords(steel, quench, risk);
  const why = `Crack and warp risk ${risk.rank} (${risk.reasons.join(", ")}; ${NO_CRITERION}).`;
  const rank = quench.kind === "water" ? "spoils the blade" : "note";
  return [caution(rank, short, `${asSentence(full)} ${why}`, instead)];
}

/**
 * What the trade would say about a quench for a steel.
 *
 * @param steel - The steel of the blade.
 * @param quench - The medium, where it is known.
 * @param blade - Length and thickness [mm], where known.
 */
export function quenchCautions(
  steel: Steel,
  quench: QuenchMedium | undefined,
  blade: Slenderness = {},
): Caution[] {
  // Where the grade does not fix its carbon, the caution on the steel itself says so.
  const kind = attemptOr(null, () => steelKind(steel));
  return [...shallowCaution(steel, kind), ...bathCaution(steel, quench, blade)];
}
