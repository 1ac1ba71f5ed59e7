import { PENDULUM, swingInertia } from "../../core/shape/swing";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { size, totalMass } from "./balance-arguments";

export const SWING_INERTIA = scalarFunction({
  name: "SWING_INERTIA",
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
});
