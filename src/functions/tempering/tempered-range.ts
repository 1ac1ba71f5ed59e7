import { temperingRelations } from "../../core/tempering/relations";
import { treatmentOf } from "../../core/tempering/tempered";
import { temperedRange } from "../../core/tempering/tempered-range";
import { rowFunction } from "../declare";
import { quenchToC } from "../hardening/quench-to-argument";
import { steel } from "../steel-argument";
import { section, sectionOf } from "./section-argument";
import { temperC, treatment } from "./treatment";

export const TEMPERED_RANGE = rowFunction({
  name: "TEMPERED_RANGE",
  summary:
    "Hardness after a temper as a band that holds 9 blades in 10, where the figure comes from and what to be wary of.",
  parameters: { steel, temperC, ...treatment, ...section, quenchToC },
  result: [
    { label: "low", unit: "HRC" },
    { label: "likely", unit: "HRC" },
    { label: "high", unit: "HRC" },
    { label: "basis", unit: "text" },
    { label: "caution", unit: "text" },
  ],
  relations: temperingRelations,
  compute: (values) => {
    const { low, likely, high, basis, caution } = temperedRange(
      values.steel,
      values.temperC,
      treatmentOf(values),
      sectionOf(values),
    );
    return [Math.round(low), Math.round(likely), Math.round(high), basis, caution];
  },
});
