import { QUENCH_END, retainedAt, retainedRelations } from "../../core/hardening/retained";
import { scalarFunction } from "../declare";
import { optionalNumber } from "../parameters";
import { steel } from "../steel-argument";
import { hardenC } from "./harden-argument";

export const RETAINED = scalarFunction({
  name: "RETAINED",
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
});
