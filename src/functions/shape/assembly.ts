import { ASSEMBLED, assembled } from "../../core/shape/assembly";
import { rowFunction } from "../declare";
import { optionalSeries, series } from "../parameters";
import { mass, position } from "./balance-arguments";

export const ASSEMBLY = rowFunction({
  name: "ASSEMBLY",
  summary: "Mass, balance and inertia of a blade with its guard, grip and pommel.",
  parameters: {
    mass: series(mass({ label: "mass g", help: "Mass of each part in g, a column." })),
    position: series(
      position({
        label: "position mm",
        help: "Balance of each part in mm on one axis; behind the guard below 0.",
      }),
    ),
    inertia: optionalSeries({
      label: "own inertia kg m²",
      quantity: "number",
      unit: "kg m²",
      min: 0,
      max: 1000,
      fallback: 0,
      help: "Inertia of each part about its own balance in kg m²; 0 for a small part.",
    }),
  },
  result: [
    { label: "mass", unit: "g" },
    { label: "balance", unit: "mm" },
    { label: "inertia about the balance", unit: "kg m²" },
  ],
  relations: [ASSEMBLED],
  compute: (lists) => {
    const parts = lists.mass.map((mass, index) => ({
      mass,
      position: lists.position[index] ?? 0,
      inertia: lists.inertia[index] ?? 0,
    }));
    const { mass, balance, inertia } = assembled(parts);
    return [mass, balance, inertia];
  },
});
