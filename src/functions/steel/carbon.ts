import { carbonLimit, statedCarbon } from "../../core/steel/carbon";
import { carbonRelations } from "../../core/steel/composition-relations";
import { scalarFunction } from "../declare";
import { steel } from "../steel-argument";
import { bound } from "./bound";

export const CARBON = scalarFunction({
  name: "CARBON",
  summary:
    "Carbon of a steel: as its designation encodes it, else the middle of the standard's limits; or either limit.",
  parameters: {
    steel,
    bound: bound('"nominal" for the figure that the other functions use, "low" or "high" for the limits.', [
      "nominal",
      "low",
      "high",
    ]),
  },
  result: { label: "carbon", unit: "mass %" },
  relations: carbonRelations,
  compute: ({ steel, bound }) => (bound === "nominal" ? statedCarbon(steel) : carbonLimit(steel, bound)),
});
