import { IDEAL_DIAMETER } from "../../core/hardening/ideal-diameter";
import { bathOf, MAX_PLATE, maxSection, maxSectionRelations } from "../../core/hardening/max-section";
import { findQuench } from "../../core/hardening/quench-media";
import { rowFunction } from "../declare";
import { text } from "../parameters";
import { steel } from "../steel-argument";

/** Two figures: the answer is good to a factor of 1.5. */
function toTwoFigures(mm: number): number {
  return Number(mm.toPrecision(2));
}

export const MAX_SECTION = rowFunction({
  name: "MAX_SECTION",
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
    const { fullyHardMm, halfHardMm, note } = maxSection(steel, bathOf(quench));
    return [toTwoFigures(fullyHardMm), toTwoFigures(halfHardMm), note];
  },
});
