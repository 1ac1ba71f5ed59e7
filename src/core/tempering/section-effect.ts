import { withinWords } from "../cell-text";
import { type Hardening, hardens } from "../hardening/hardens";
import type { QuenchMedium } from "../hardening/quench-media";
import { NotAvailable } from "../refusal";
import type { Steel } from "../steel/steel";

/** Thickness of the place in question at the quench, where it is known, and the bath. */
export interface QuenchedSection {
  /** Thickness of the place in question at the quench, above 0 [mm]. */
  readonly thicknessMm?: number | undefined;
  /** Medium of the quench. */
  readonly quench?: QuenchMedium | undefined;
}

/** What a section does to the band of a hardness after temper. */
export interface SectionEffect {
  /** How much lower the low end lies, HRC. */
  readonly lower: number;
  readonly caution: string;
}

/** Published bars that hardened in part read 4 to 8 HRC under those that hardened through, 205 to 425 °C. */
const SLACK_HRC = 8;

/** How much lower the low end lies for a section that hardens in part, HRC. */
export function slackOf(word: Hardening["word"]): number {
  return word === "marginal" ? SLACK_HRC : 0;
}

/** Why a blade that stays soft, or soft in its middle, has no hardness after temper. */
export function softText({ word, sentence }: Pick<Hardening, "word" | "sentence">): string {
  if (word === "does not harden") return sentence;
  return withinWords([sentence, "give the thickness where hardness counts (the edge) or a faster quench"]);
}

/**
 * What a section does to the hardness after temper.
 *
 * @throws NotAvailable where the blade does not harden, or not through: no temper is published for a soft middle.
 */
export function sectionEffect(steel: Steel, section: QuenchedSection): SectionEffect {
  const { word, sentence } = hardens(steel, section);
  switch (word) {
    case "not judged":
      return { lower: 0, caution: `taken as hardened through, section not judged: ${sentence}` };
    case "hardens through":
      return { lower: 0, caution: sentence };
    case "marginal":
      return {
        lower: SLACK_HRC,
        caution: `${sentence}; low end ${SLACK_HRC} HRC lower`,
      };
    default:
      throw new NotAvailable(softText({ word, sentence }));
  }
}
