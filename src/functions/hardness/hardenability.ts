import { HARDENABILITY_RELATIONS, hardenability } from "../../core/hardening/jominy";
import { scalarFunction } from "../declare";
import { optionalNumber } from "../parameters";
import { steel } from "../steel-argument";

export const HARDENABILITY = scalarFunction({
  name: "HARDENABILITY",
  topic: "Hardening",
  summary:
    "Ideal diameter of a steel from its composition: the round that is half martensite at its centre in an ideal quench.",
  parameters: {
    steel,
    grain: optionalNumber({
      label: "grain",
      quantity: "number",
      unit: "",
      above: 0,
      max: 14,
      fallback: 7,
      help: "ASTM grain number of the austenite, 4 to 10.",
    }),
  },
  result: { label: "ideal diameter", unit: "mm" },
  relations: HARDENABILITY_RELATIONS,
  compute: ({ steel, grain }) => hardenability(steel, grain),
  examples: [
    {
      given: ["C 0.22 Mn 0.80 Si 0.18 Ni 0.10 Cr 0.43 Mo 0.25 Cu 0.10 V 0.05"],
      gives: 49.53,
      within: 0.76,
      source: "ASTM A255, worked example of SAE 4118 modified: 1.95 in, rounded factors; 0.03 in allowed",
    },
  ],
});
