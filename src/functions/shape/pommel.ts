import { COUNTERWEIGHT, pommelMass } from "../../core/shape/pommel";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { mass, position } from "./balance-arguments";

export const POMMEL = scalarFunction({
  name: "POMMEL",
  summary: "Mass of the pommel that brings the balance where it is wanted.",
  parameters: {
    restMass: number(mass({ label: "rest mass g", help: "Everything but the pommel, in g." })),
    restBalance: number(
      position({ label: "rest balance mm", help: "Balance of everything but the pommel, in mm." }),
    ),
    pommelAt: number(
      position({
        label: "pommel at mm",
        help: "Where the middle of the pommel will sit, in mm; behind the guard below 0.",
      }),
    ),
    wanted: number(position({ label: "wanted balance mm", help: "Balance of the finished piece, in mm." })),
  },
  result: { label: "pommel", unit: "g" },
  relations: [COUNTERWEIGHT],
  compute: ({ restMass, restBalance, pommelAt, wanted }) =>
    pommelMass(restMass, restBalance, pommelAt, wanted),
});
