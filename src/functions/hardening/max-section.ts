import { IDEAL_DIAMETER } from "../../core/hardening/ideal-diameter";
import { bathOf, MAX_PLATE, maxSection, maxSectionRelations } from "../../core/hardening/max-section";
import { findQuench } from "../../core/hardening/quench-media";
import { rowFunction } from "../declare";
import { text } from "../parameters";
import { steel } from "../steel-argument";

const GRADE_SERIES = "plate calculation, series by grade";

/** Two figures: the answer is good to a factor of 1.5. */
function toTwoFigures(mm: number): number {
  return Number(mm.toPrecision(2));
}

export const MAX_SECTION = rowFunction({
  name: "MAX_SECTION",
  topic: "Hardening",
  summary: "Thickest flat section that hardens in a bath, within a factor of 1.5 either way.",
  parameters: {
    steel,
    quench: text({
      label: "quench",
      kind: "quench",
      help: 'Bath, such as "fast oil"; QUENCHES() lists every word.',
      accepts: 'a quench such as "fast oil"; QUENCHES() lists them',
      find: findQuench,
    }),
  },
  result: [
    { label: "fully hard", unit: "mm" },
    { label: "half martensite", unit: "mm" },
    { label: "note", unit: "text" },
  ],
  relations: (steel) => (steel === null ? [MAX_PLATE, IDEAL_DIAMETER] : maxSectionRelations(steel)),
  compute: ({ steel, quench }) => {
    const { fullyHardMm, halfHardMm, note } = maxSection(steel, bathOf(quench.word));
    return [toTwoFigures(fullyHardMm), toTwoFigures(halfHardMm), note];
  },
  examples: [
    { given: ["1095", "fast oil"], gives: [2.9, 5.2, "…"], source: GRADE_SERIES },
    { given: ["1084", "fast oil"], gives: [5.6, 9.3, "…"], within: 0.11, source: GRADE_SERIES },
    { given: ["5160", "fast oil"], gives: [22, 33, "…"], source: GRADE_SERIES },
    { given: ["80CrV2", "agitated water"], gives: [15, 22, "…"], source: GRADE_SERIES },
  ],
});
