import { cautionClause } from "../../core/blade/caution";
import { bathCaution } from "../../core/blade/quench-cautions";
import { hardens } from "../../core/hardening/hardens";
import { quenchSection, type SectionInputs } from "../../core/hardening/section-quench";
import {
  hardenedMm,
  hardnessOrBand,
  type SectionPoint,
  sectionPoints,
  verdictText,
} from "../../core/hardening/section-report";
import { rowFunction } from "../declare";
import { sectionInputs, sectionParameters } from "./section-arguments";
import { sectionRelations } from "./section-relations";

/** The sentence of a steel that the quench cannot harden. */
function refusedByQuench({ steel, quench }: SectionInputs): string[] {
  const { word, sentence } = hardens(steel, { quench });
  return word === "does not harden" ? [sentence] : [];
}

export const SECTION_QUENCH = rowFunction({
  name: "SECTION_QUENCH",
  takesLong: true,
  summary:
    "Whether a tapered section hardens in a bath, bare or under clay: hardened depth, hardness at edge, middle and spine, verdict.",
  parameters: sectionParameters,
  result: [
    { label: "hardened depth", unit: "mm" },
    { label: "edge", unit: "HRC" },
    { label: "middle", unit: "HRC" },
    { label: "spine", unit: "HRC" },
    { label: "verdict", unit: "text" },
  ],
  relations: sectionRelations,
  compute: (given) => {
    const inputs = sectionInputs(given);
    const band = quenchSection(inputs);
    const points = sectionPoints(band);
    const at = (share: number) =>
      hardnessOrBand(points[Math.round(share * (points.length - 1))] as SectionPoint);
    return [
      hardenedMm(inputs, band),
      at(0),
      at(0.5),
      at(1),
      [
        [verdictText(inputs, band), ...refusedByQuench(inputs)].join("; "),
        ...bathCaution(inputs.steel, inputs.quench).map(cautionClause),
      ].join(". "),
    ];
  },
});
