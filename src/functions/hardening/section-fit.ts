import { fitSection } from "../../core/hardening/section-fit";
import { InvalidValue } from "../../core/refusal";
import { rowFunction } from "../declare";
import { numberOrNothing } from "../parameters";
import { sectionInputs, sectionParameters } from "./section-arguments";
import { sectionRelations } from "./section-relations";

export const SECTION_FIT = rowFunction({
  name: "SECTION_FIT",
  takesLong: true,
  summary:
    "Clay resistance, or without clay the bath factor, that makes the section calculation meet one measured blade.",
  parameters: {
    ...sectionParameters,
    measured: numberOrNothing({
      quantity: "length",
      unit: "mm",
      above: 0,
      max: 200,
      label: "measured depth mm",
      help: "Hardened depth of one blade from the edge, etched or traversed: needed, though it stands last.",
    }),
  },
  result: [
    { label: "clay", unit: "m²K/W" },
    { label: "bath factor", unit: "" },
    { label: "misfit", unit: "mm" },
  ],
  relations: sectionRelations,
  compute: ({ measured, ...given }) => {
    if (measured === undefined) {
      throw new InvalidValue(
        "measured depth mm is empty: give the hardened depth of one blade, in mm from the edge, as the last argument",
      );
    }
    const { clay, bathFactor, misfitMm } = fitSection(sectionInputs(given), measured);
    return [clay, bathFactor, misfitMm];
  },
});
