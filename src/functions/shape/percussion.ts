import { effectiveMass, IMPACT_MASS, PERCUSSION, percussionCentre } from "../../core/shape/percussion";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { balance, inertia, position, totalMass } from "./balance-arguments";

const body = { mass: number(totalMass), balance: number(balance), inertia: number(inertia) };

export const PERCUSSION_CENTRE = scalarFunction({
  name: "PERCUSSION_CENTRE",
  summary:
    "Centre of percussion that belongs to a held point, rigid body; not the node of vibration near the point.",
  parameters: {
    ...body,
    held: number(
      position({
        label: "held at mm",
        help: "Where the blade is held, in mm on the same axis as the balance.",
      }),
    ),
  },
  result: { label: "centre of percussion", unit: "mm" },
  relations: [PERCUSSION],
  compute: ({ held, ...rigid }) => percussionCentre(rigid, held),
});

export const EFFECTIVE_MASS = scalarFunction({
  name: "EFFECTIVE_MASS",
  summary:
    "Mass that a target feels where it is struck, rigid body: the whole at the balance, less toward the ends.",
  parameters: {
    ...body,
    at: number(position({ label: "at mm", help: "Place of impact in mm on the same axis as the balance." })),
  },
  result: { label: "effective mass", unit: "g" },
  relations: [IMPACT_MASS],
  compute: ({ at, ...rigid }) => effectiveMass(rigid, at),
});
