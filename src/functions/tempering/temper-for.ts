import { temperingRelations } from "../../core/tempering/relations";
import { temperFor } from "../../core/tempering/temper-for";
import { scalarFunction } from "../declare";
import { steel } from "../steel-argument";
import { targetHrc, toTenth, treatment, treatmentOf } from "./treatment";

export const TEMPER_FOR = scalarFunction({
  name: "TEMPER_FOR",
  topic: "Tempering",
  summary:
    "Temper for a hardness in a blade that hardened through, from 150 °C (302 °F) up: a starting point, so test one and step up.",
  parameters: { steel, targetHrc, ...treatment },
  result: { label: "temper", unit: "°C" },
  relations: temperingRelations,
  compute: (values) => toTenth(temperFor(values.steel, values.targetHrc, treatmentOf(values))),
  examples: [
    {
      given: ["C 0.60 Mn 0.88 Si 0.25 Cr 0.80", 57, 4],
      gives: 255.3,
      within: 0.2,
      source: "worked inverse of the composition formula",
    },
    {
      given: ["C 0.60 Mn 0.88 Si 0.25 Cr 0.80", 51],
      gives: 375.7,
      within: 0.2,
      source: "worked inverse of the composition formula",
    },
    { given: ["L6", 58], gives: 260, within: 0.1, source: "Diamond Metals, L6 data page" },
    { given: ["S7", 55, 2, 2], gives: 260, within: 0.1, source: "Eastern Tool Steel, S-7 data sheet" },
  ],
});
