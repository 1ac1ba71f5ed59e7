import type { QuenchMedium } from "../../core/hardening/quench-media";
import { InvalidValue } from "../../core/refusal";
import type { QuenchedSection } from "../../core/tempering/section-effect";
import { quenchOptions } from "../hardening/quench-options";
import { numberOrNothing, textOrNothing } from "../parameters";

/** The section that was quenched, where a function can judge it. */
export const section = {
  sectionMm: numberOrNothing({
    label: "section mm",
    quantity: "length",
    unit: "mm",
    above: 0,
    max: 1000,
    help: "Thickness at the quench, in mm, of the place asked about; where left out, it is taken as hardened through.",
  }),
  quench: textOrNothing({
    ...quenchOptions,
    help: 'Bath, such as "fast oil"; QUENCHES() lists every word.',
  }),
};

interface SectionValues {
  readonly sectionMm: number | undefined;
  readonly quench: QuenchMedium | undefined;
}

/** The section that core asks for; half of one is refused. */
export function sectionOf({ sectionMm, quench }: SectionValues): QuenchedSection | undefined {
  if (sectionMm === undefined && quench === undefined) return undefined;
  if (sectionMm === undefined)
    throw new InvalidValue("section mm: a quench needs the thickness that was quenched, in mm");
  if (quench === undefined) throw new InvalidValue("quench: a section needs its bath; QUENCHES() lists them");
  return { thicknessMm: sectionMm, quench };
}
