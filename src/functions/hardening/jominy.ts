import { IDEAL_DIAMETER } from "../../core/hardening/ideal-diameter";
import { JOMINY_CURVE, jominyHardness } from "../../core/hardening/jominy";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { steel } from "../steel-argument";

export const JOMINY = scalarFunction({
  name: "JOMINY",
  summary: "Hardness along an end-quenched bar from composition, to 0.70 % C; the steep part is uncertain.",
  parameters: {
    steel,
    distance: number({
      label: "distance mm",
      quantity: "length",
      unit: "mm",
      above: 0,
      max: 100,
      help: "Distance from the quenched end, 1.5 to 50 mm.",
    }),
  },
  result: { label: "hardness", unit: "HRC" },
  relations: [JOMINY_CURVE, IDEAL_DIAMETER],
  compute: ({ steel, distance }) => jominyHardness(steel, distance),
});
