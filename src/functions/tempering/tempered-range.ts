import { temperingRelations } from "../../core/tempering/relations";
import { temperedRange } from "../../core/tempering/tempered-range";
import { rowFunction } from "../declare";
import { steel } from "../steel-argument";
import { temperC, treatment, treatmentOf } from "./treatment";

export const TEMPERED_RANGE = rowFunction({
  name: "TEMPERED_RANGE",
  topic: "Tempering",
  summary:
    "Hardness after a temper as a band that holds 9 blades in 10, where the figure comes from and what to be wary of.",
  parameters: { steel, temperC, ...treatment },
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
    { given: ["A2", 205, 2, 2], gives: [59, 61, 64, "…", "…"], source: "Crucible, A2 data sheet (61), ±2.5" },
  ],
});
