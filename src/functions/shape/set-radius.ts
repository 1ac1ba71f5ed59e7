import { YIELD_STRENGTH } from "../../core/hardness/strength";
import { BEND_TO_SET, setRadius } from "../../core/shape/set-radius";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { size } from "./balance-arguments";

export const SET_RADIUS = scalarFunction({
  name: "SET_RADIUS",
  summary:
    "Bend radius at which a hardened blade would take a set; it may break before it sets: not a radius for a proof test.",
  parameters: {
    thickness: number(
      size({ label: "thickness mm", help: "Thickness at the thickest place of the bend, in mm." }),
    ),
    hrc: number({
      label: "HRC",
      quantity: "hardness",
      unit: "HRC",
      above: 0,
      max: 70,
      help: "Hardness, up to 58 HRC.",
    }),
  },
  result: { label: "bend radius", unit: "mm" },
  relations: [BEND_TO_SET, YIELD_STRENGTH],
  compute: ({ thickness, hrc }) => setRadius(thickness, hrc),
});
