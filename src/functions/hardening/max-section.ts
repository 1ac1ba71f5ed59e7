import { IDEAL_DIAMETER } from "../../core/hardening/ideal-diameter";
import { bathOf, MAX_PLATE, maxSection, maxSectionRelations } from "../../core/hardening/max-section";
import { rowFunction } from "../declare";
import { text } from "../parameters";
import { steel } from "../steel-argument";
import { quenchOptions } from "./quench-options";

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
      ...quenchOptions,
      help: 'Bath, such as "fast oil"; QUENCHES() lists every word.',
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
