import { YIELD_RATIO, YIELD_STRENGTH } from "../../core/hardness/strength";
import { BEND_TO_SET, setRadius } from "../../core/shape/set-radius";
import { STEEL_MODULUS } from "../../core/steel/elastic-modulus";
import { scalarFunction } from "../declare";
import { yieldHardness, yieldTemper } from "../hardness/yield-arguments";
import { number } from "../parameters";
import { size } from "./balance-arguments";
import { INCHES_UNDER } from "./lengths";

export const SET_RADIUS = scalarFunction({
  name: "SET_RADIUS",
  summary:
    "Bend radius at which a hardened blade would take a set; it may break before it sets: not a radius for a proof test.",
  parameters: {
    thickness: number({
      ...size({ label: "thickness mm", help: "Thickness at the thickest place of the bend, in mm." }),
      inchesUnder: INCHES_UNDER.thickness,
    }),
    hrc: number({ ...yieldHardness, help: "Hardness, up to 58 HRC." }),
    temperC: yieldTemper,
  },
  result: { label: "bend radius", unit: "mm" },
  relations: [BEND_TO_SET, STEEL_MODULUS, YIELD_STRENGTH, YIELD_RATIO],
  compute: ({ thickness, hrc, temperC }) => setRadius(thickness, hrc, temperC),
});
