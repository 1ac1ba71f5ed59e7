import { PENDULUM } from "../../core/shape/balance-relations";
import { swingInertia } from "../../core/shape/swing";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { size, totalMass } from "./arguments";

export const SWING_INERTIA = scalarFunction({
  name: "SWING_INERTIA",
  topic: "Shape, mass and balance",
  summary: "Inertia about the balance of a blade hung from a pivot and swung a few degrees.",
  parameters: {
    mass: number(totalMass),
    distance: number(size({ label: "balance to pivot mm", help: "From the balance to the pivot, in mm." })),
    period: number({
      label: "period s",
      quantity: "time",
      unit: "s",
      min: 0.01,
      max: 60,
      help: "One swing there and back in seconds: time 20 and divide.",
    }),
  },
  result: { label: "inertia about the balance", unit: "kg m²" },
  relations: [PENDULUM],
  compute: ({ mass, distance, period }) => swingInertia(mass, distance, period),
  examples: [
    {
      given: [1238.064, 327.346, 1.545784],
      gives: 0.1078864,
      within: 1e-6,
      source: "by hand: m g d T² / 4π² - m d² with g 9.80665",
    },
    {
      given: [1000, 500, 1.63823],
      gives: 0.0833333,
      within: 2e-6,
      source: "mechanics texts: a uniform 1 m rod on its end swings in 2π √(2L / 3g); m L² / 12",
    },
  ],
});
