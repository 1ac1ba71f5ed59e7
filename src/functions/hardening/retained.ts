import { retainedAt, retainedRelations } from "../../core/hardening/retained";
import { scalarFunction } from "../declare";
import { steel } from "../steel-argument";
import { hardenC } from "./harden-argument";
import { quenchToC } from "./quench-to-argument";

export const RETAINED = scalarFunction({
  name: "RETAINED",
  summary: "Austenite left after the quench in %; above 5 % Cr an order of magnitude only.",
  parameters: {
    steel,
    hardenC,
    quenchToC,
  },
  result: { label: "retained austenite", unit: "%" },
  relations: retainedRelations,
  compute: ({ steel, hardenC, quenchToC }) => Math.round(retainedAt(steel, hardenC, quenchToC) * 10) / 10,
});
