import { asFahrenheit, fahrenheitQuestion } from "../../core/tempering/fahrenheit";
import { temperingRelations } from "../../core/tempering/relations";
import { treatmentOf } from "../../core/tempering/tempered";
import { temperedRange } from "../../core/tempering/tempered-range";
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
    const treated = treatmentOf(values);
    const { low, likely, high, basis, caution } = temperedRange(
      steel,
      temper.celsius,
      treated,
      sectionOf(values),
    );
    const asked = temper.hasUnit ? undefined : asFahrenheit(steel, temper.celsius, treated);
    const question = asked === undefined ? "" : `${fahrenheitQuestion(temper.celsius, asked)} `;
    return [Math.round(low), Math.round(likely), Math.round(high), basis, `${question}${caution}`];
  },
});
