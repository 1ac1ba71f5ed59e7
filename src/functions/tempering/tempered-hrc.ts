import { temperingRelations } from "../../core/tempering/relations";
import { temperedHardness } from "../../core/tempering/tempered";
import { scalarFunction } from "../declare";
import { steel } from "../steel-argument";
import { temperC, toTenth, treatment, treatmentOf } from "./treatment";

export const TEMPERED_HRC = scalarFunction({
  name: "TEMPERED_HRC",
  topic: "Tempering",
  summary: "Likely hardness after a temper of a blade that hardened through; TEMPERED_RANGE gives the band.",
  parameters: { steel, temperC, ...treatment },
  result: { label: "hardness", unit: "HRC" },
  relations: temperingRelations,
  compute: (values) => toTenth(temperedHardness(values.steel, values.temperC, treatmentOf(values))),
  examples: [
    {
      given: ["C 0.60 Mn 0.88 Si 0.25 Cr 0.80", 205],
      gives: 59.53,
      within: 0.05,
      source: "worked value of the composition formula",
    },
    {
      given: ["1045", 204.4, 1],
      gives: 56.3,
      within: 2.5,
      source: "Grange and Baughman 1956, analysed 1045",
    },
    { given: ["1095", "400 °F", 2.5], gives: 62, within: 2.5, source: "Hollomon and Jaffe 1945, 0.98 % C" },
    { given: ["D2", 205, 2, 2], gives: 61, source: "Crucible, D2 data sheet" },
    { given: ["O1", 260], gives: 60, within: 0.05, source: "Diamond Metals, O1 data page" },
    {
      given: ["M2 (regular C)", 540, 2, 2, null, null, 1120],
      gives: 62,
      source: "Eastern Tool Steel, M-2 data sheet",
    },
  ],
});
