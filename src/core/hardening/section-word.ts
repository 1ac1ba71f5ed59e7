import { type Hardening, hardens } from "./hardens";
import type { SectionBand, SectionInputs } from "./section-quench";
import { pearliteWord } from "./through-words";

/** A section as the table of plates takes it: bare, straight into a bath as published, from the usual temperature. */
function isAsPublished({ clay, below, transferS, bathFactor, startC }: SectionInputs): boolean {
  return clay === 0 && below === 0 && transferS === 0 && bathFactor === 1 && startC === undefined;
}

/**
 * Whether a section hardens through, in the word that every other function has for it.
 *
 * @param inputs - The section as it is quenched: widths [mm], temperatures [°C], transfer [s], clay [m²K/W]
 * @param band - As `quenchSection` gives it.
 * @returns What `hardens` says of the thickest place of a bare section; under clay, or in a bath of one's own,
 *   the word for the likely pearlite at the worst place.
 * Error and source: those of `hardens` and `quenchSection`.
 */
export function sectionWord(inputs: SectionInputs, { likely }: SectionBand): Hardening["word"] {
  const { steel, quench, spineMm, edgeMm } = inputs;
  if (isAsPublished(inputs)) {
    const { word } = hardens(steel, { quench, thicknessMm: Math.max(spineMm, edgeMm) });
    if (word !== "not judged") return word;
  }
  return pearliteWord(likely.most);
}
