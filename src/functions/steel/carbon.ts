import { carbonLimit, carbonOf } from "../../core/steel/carbon";
import { carbonRelations } from "../../core/steel/composition-relations";
import { scalarFunction } from "../declare";
import { steel } from "../steel-argument";
import { bound } from "./bound";

const TABLES = "limits of the standard as reproduced by a supplier";

export const CARBON = scalarFunction({
  name: "CARBON",
  topic: "Steel",
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
  compute: ({ steel, bound }) => (bound === "nominal" ? carbonOf(steel) : carbonLimit(steel, bound)),
  examples: [
    { given: ["1095"], gives: 0.95, source: "SAE J402: the last two digits are hundredths of a percent" },
    { given: [5160], gives: 0.6, source: "SAE J402, the designation typed as a number" },
    { given: ["52100"], gives: 1, source: "SAE J402: three carbon digits" },
    { given: ["C75S"], gives: 0.75, source: "EN 10027-1: hundredths of a percent" },
    { given: ["51CrV4"], gives: 0.51, source: "EN 10027-1" },
    { given: ["X50CrMoV15"], gives: 0.5, source: "EN 10027-1" },
    { given: ["S50C"], gives: 0.5, source: "JIS G 4051" },
    { given: ["65Mn"], gives: 0.65, source: "GB/T 221" },
    { given: ["У10"], gives: 1, source: "GOST 1435: tenths of a percent" },
    { given: ["D2"], gives: 1.5, source: "ASTM A681: C 1.40-1.60, middle" },
    { given: ["1084", "low"], gives: 0.8, source: `SAE J403, ${TABLES}` },
    { given: ["1084", "high"], gives: 0.93, source: `SAE J403, ${TABLES}` },
    { given: ["304", "high"], gives: 0.08, source: "SAE J405, as a producer reproduces it" },
    { given: ["C 0.62 Mn 0.75"], gives: 0.62, source: "as given" },
  ],
});
