import type { QuenchMedium } from "../hardening/quench-media";
import { type SectionVerdict, sectionVerdict } from "../hardening/section-verdict";
import { attempt, NotAvailable } from "../refusal";
import type { Steel } from "../steel/steel";

/** Thickness of the place in question at the quench, and the bath. */
export interface QuenchedSection {
  readonly thicknessMm: number;
  readonly quench: QuenchMedium;
}

/** What a section does to the band of a hardness after temper. */
export interface SectionEffect {
  /** How much lower the low end lies, HRC. */
  readonly lower: number;
  readonly caution: string;
}

/** Published bars that hardened in part read 4 to 8 HRC under those that hardened through, 205 to 425 °C. */
const SLACK_HRC = 8;

function judged(steel: Steel, { thicknessMm, quench }: QuenchedSection): SectionVerdict | string {
  const found = attempt(() => sectionVerdict(steel, thicknessMm, quench), NotAvailable);
  return found instanceof NotAvailable ? found.message : found;
}

/**
 * What a section does to the hardness after temper.
 *
 * @throws NotAvailable where the section does not harden through: no temper is published for a soft middle.
 */
export function sectionEffect(steel: Steel, section: QuenchedSection): SectionEffect {
  const verdict = judged(steel, section);
  if (typeof verdict === "string")
    return { lower: 0, caution: `taken as hardened through, section not judged: ${verdict}` };
  if (verdict.verdict === "hardens through") return { lower: 0, caution: verdict.sentence };
  if (verdict.verdict === "marginal") {
    return {
      lower: SLACK_HRC,
      caution: `${verdict.sentence}; low end ${SLACK_HRC} HRC lower, as bars that hardened in part read`,
    };
  }
  throw new NotAvailable(
    `${verdict.sentence}; no hardness after temper is published for a soft middle: give the thickness where hardness counts ` +
      "(at the edge of a ground blade), or a faster quench",
  );
}
