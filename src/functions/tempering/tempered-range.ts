import { temperingRelations } from "../../core/tempering/relations";
import { temperedRange } from "../../core/tempering/tempered-range";
import { rowFunction } from "../declare";
import { steel } from "../steel-argument";
import { section, sectionOf } from "./section-argument";
import { temperC, treatment, treatmentOf } from "./treatment";

export const TEMPERED_RANGE = rowFunction({
  name: "TEMPERED_RANGE",
  topic: "Tempering",
  summary:
    "Hardness after a temper as a band that holds 9 blades in 10, where the figure comes from and what to be wary of.",
  parameters: { steel, temperC, ...treatment, ...section },
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
  examples: [
    {
      given: ["5160", 204.4],
      gives: [57, 60, 63, "…", "…"],
      source:
        "composition formula worked at 205 °C (59.5), ±3; 58.6 published (627 HB, open materials table)",
    },
    {
      given: ["1095", 200, 2, 1, null, null, null, 4, "fast oil"],
      gives: [51, 62, 64, "…", "…"],
      within: 1,
      source:
        "Hollomon and Jaffe 1945 (62), ±2.5; 1095 in fast oil is fully hard to 2.9 mm and half martensite at 5.2 mm, and part-hardened bars read up to 8 HRC under",
    },
    { given: ["A2", 205, 2, 2], gives: [59, 61, 64, "…", "…"], source: "Crucible, A2 data sheet (61), ±2.5" },
  ],
});
