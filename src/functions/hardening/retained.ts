import { QUENCH_END, retainedAt, retainedRelations } from "../../core/hardening/retained";
import { scalarFunction } from "../declare";
import { optionalNumber } from "../parameters";
import { steel } from "../steel-argument";
import { hardenC } from "./harden-argument";

const EQUATION = "worked value of van Bohemen's equation on the calculated carbon in solution";

export const RETAINED = scalarFunction({
  name: "RETAINED",
  topic: "Hardening",
  summary: "Austenite left after the quench in %; above 5 % Cr an order of magnitude only.",
  parameters: {
    steel,
    hardenC,
    quenchToC: optionalNumber({
      label: "quench to C",
      quantity: "temperature",
      unit: "°C",
      min: QUENCH_END.coldest,
      max: QUENCH_END.hottest,
      fallback: 20,
      help: "Coldest temperature that the blade reaches straight from the quench in °C; waiting at room temperature makes austenite harder to turn.",
    }),
  },
  result: { label: "retained austenite", unit: "%" },
  relations: retainedRelations,
  compute: ({ steel, hardenC, quenchToC }) => Math.round(retainedAt(steel, hardenC, quenchToC) * 10) / 10,
  examples: [
    { given: ["C 1.0 Mn 0.35 Si 0.25 Cr 1.45", 845], gives: 11, within: 0.3, source: EQUATION },
    { given: ["C 1.0 Mn 0.35 Si 0.25 Cr 1.45", 875], gives: 15.7, within: 0.3, source: EQUATION },
    { given: ["C 1.0 Mn 0.35 Si 0.25 Cr 1.45", 845, -75], gives: 3.4, within: 0.3, source: EQUATION },
    { given: ["C 0.60 Mn 0.88 Si 0.25 Cr 0.80", 845], gives: 2.6, within: 0.1, source: EQUATION },
    {
      given: ["440C", 1080],
      gives: 17,
      within: 2,
      source:
        "worked value of Koistinen and Marburger with Ms by Finkler and Schirra, manganese and silicon at the maximum",
    },
  ],
});
