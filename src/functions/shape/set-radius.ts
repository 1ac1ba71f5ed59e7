import { YIELD_RATIO, YIELD_STRENGTH } from "../../core/hardness/strength";
import { BEND_TO_SET, setRadius } from "../../core/shape/set-radius";
import { scalarFunction } from "../declare";
import { number, numberOrNothing } from "../parameters";
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
    temperC: numberOrNothing({
      label: "temper C",
      quantity: "temperature",
      unit: "°C",
      above: 0,
      max: 1300,
      help: "Temper of the steel in °C, where known: below 200 °C it takes a set earlier.",
    }),
  },
  result: { label: "bend radius", unit: "mm" },
  relations: [BEND_TO_SET, YIELD_STRENGTH, YIELD_RATIO],
  compute: ({ thickness, hrc, temperC }) => setRadius(thickness, hrc, temperC),
});
