import { HARDENABILITY_RELATIONS, hardenability } from "../../core/hardening/jominy";
import { scalarFunction } from "../declare";
import { optionalNumber } from "../parameters";
import { steel } from "../steel-argument";

export const HARDENABILITY = scalarFunction({
  name: "HARDENABILITY",
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
});
