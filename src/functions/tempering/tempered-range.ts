import { fahrenheitAsked } from "../../core/blade/hardness-cautions";
import { bladeStory } from "../../core/blade/story";
import { withinWords } from "../../core/cell-text";
import { NotAvailable } from "../../core/refusal";
import { temperingRelations } from "../../core/tempering/relations";
import { treatmentOf } from "../../core/tempering/tempered";
import { rowFunction } from "../declare";
import { quenchToC } from "../hardening/quench-to-argument";
import { steel } from "../steel-argument";
import { section, sectionOf } from "./section-argument";
import { temperC, treatment } from "./treatment";
import { typedTemper } from "./typed-temper";

export const TEMPERED_RANGE = rowFunction({
  name: "TEMPERED_RANGE",
  summary:
    "Hardness after a temper as a band that holds 9 blades in 10, where the figure comes from and what to be wary of.",
  parameters: { steel, temper: typedTemper(temperC), ...treatment, ...section, quenchToC },
  result: [
    { label: "low", unit: "HRC" },
    { label: "likely", unit: "HRC" },
    { label: "high", unit: "HRC" },
    { label: "basis", unit: "text" },
    { label: "caution", unit: "text" },
  ],
  relations: temperingRelations,
  compute: (values) => {
    const { steel, temper } = values;
    const section = sectionOf(values);
    const { estimate, basis, taken, missing, cautions } = bladeStory({
      steel,
      treatment: treatmentOf(values),
      temperC: temper.celsius,
      temperHasUnit: temper.hasUnit,
      thickness: section?.thicknessMm,
      quench: section?.quench,
    });
    if (estimate === undefined) throw missing ?? new NotAvailable(`no temper of ${steel.name} is held`);
    const hrc = [estimate.low, estimate.likely, estimate.high].map(Math.round);
    return [...hrc, basis, withinWords([fahrenheitAsked(cautions), taken], " ")];
  },
});
