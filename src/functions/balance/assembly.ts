import { assembled } from "../../core/shape/assembly";
import { ASSEMBLED } from "../../core/shape/balance-relations";
import { rowFunction } from "../declare";
import { optionalSeries, series } from "../parameters";
import { mass, position } from "./arguments";

export const ASSEMBLY = rowFunction({
  name: "ASSEMBLY",
  topic: "Shape, mass and balance",
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
  examples: [
    {
      given: [
        [606.184, 131.88, 180, 60, 260],
        [341.643, -105, -8, -110, -225],
        [0.0335543, 0.000484659, 0.000486, 0.0001805, 0.0000416],
      ],
      gives: [1238.064, 102.346, 0.1078864],
      within: 5e-4,
      source:
        "sums by hand; own inertias: blade from its stations, bars as mass × length² ÷ 12, pommel as 0.4 × mass × radius²",
    },
    {
      given: [
        [100, 300],
        [0, 400],
      ],
      gives: [400, 300, 0.012],
      within: 1e-12,
      source: "two points by hand: (100 × 300² + 300 × 100²) g mm²",
    },
  ],
});
