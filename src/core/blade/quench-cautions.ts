import { BATHS, type Bath, MAX_PLATE, maxSection } from "../hardening/max-section";
import type { QuenchMedium } from "../hardening/quench-media";
import { Refusal } from "../refusal";
import type { Relation } from "../relation";
import type { Steel } from "../steel/steel";
import { type SteelKind, steelKind } from "./steel-kind";

const PLAIN: readonly (SteelKind | null)[] = ["medium carbon", "plain high carbon"];
const LIQUID_HARDENING: readonly (SteelKind | null)[] = [...PLAIN, "spring steel"];
/** Thicker than this is no blade: the figure is then of no use, mm. */
const BLADE_MM = 12;
const USUAL_BATH: Bath = "fast oil";

/** The relations that quench cautions may rest on. */
export const QUENCH_RELATIONS: readonly Relation[] = [MAX_PLATE];

function bathOf(quench: QuenchMedium | undefined): Bath | undefined {
  if (quench === undefined) return USUAL_BATH;
  return BATHS.find((bath) => bath === quench.word);
}

function sectionCaution(steel: Steel, kind: SteelKind | null, quench: QuenchMedium | undefined): string[] {
  const bath = bathOf(quench);
  if (bath === undefined || (quench === undefined && kind !== "plain high carbon")) return [];
  try {
    const { fullyHardMm } = maxSection(steel, bath);
    if (fullyHardMm > BLADE_MM) return [];
    return [
      `${steel.name}, ${bath}: fully hard to about ${fullyHardMm.toFixed(fullyHardMm < 10 ? 1 : 0)} mm, ` +
        "within a factor of 1.5 either way.",
    ];
  } catch (thrown) {
    if (thrown instanceof Refusal) return [];
    throw thrown;
  }
}

/** Whether the bath itself is too fierce or too mild for the steel, as a sentence. */
export function bathCaution(steel: Steel, quench: QuenchMedium | undefined): string[] {
  const kind = steelKind(steel);
  const wet = quench?.kind === "water";
  const dry = quench?.kind === "air" || quench?.kind === "plates" || quench?.kind === "gas";
  if (wet && !PLAIN.includes(kind)) return [`${steel.name} is likely to crack in ${quench.word}: use oil.`];
  if (wet && kind === "plain high carbon") {
    return [`${quench.word} cracks some blades of ${steel.name}: allow for losses in the number started.`];
  }
  if (dry && LIQUID_HARDENING.includes(kind)) {
    return [`${steel.name} does not harden in ${quench.word}: it needs oil or water.`];
  }
  return [];
}

/**
 * What the trade would say about a quench for a steel, as sentences.
 *
 * @param steel - The steel of the blade.
 * @param quench - The medium; left out, shallow-hardening steels are told what fast oil can do.
 */
export function quenchCautions(steel: Steel, quench: QuenchMedium | undefined): string[] {
  try {
    const kind = steelKind(steel);
    const shallow =
      kind === "plain high carbon"
        ? [`${steel.name} hardens shallow and leaves little room for error in the quench.`]
        : [];
    return [...shallow, ...bathCaution(steel, quench), ...sectionCaution(steel, kind, quench)];
  } catch (thrown) {
    // The grade does not fix its carbon: the caution on the steel itself says so.
    if (thrown instanceof Refusal) return [];
    throw thrown;
  }
}
