import { IMPACT_MASS, PERCUSSION } from "../../core/shape/balance-relations";
import { effectiveMass, percussionCentre } from "../../core/shape/percussion";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { balance, inertia, position, totalMass } from "./arguments";

const body = { mass: number(totalMass), balance: number(balance), inertia: number(inertia) };

export const PERCUSSION_CENTRE = scalarFunction({
  name: "PERCUSSION_CENTRE",
  topic: "Shape, mass and balance",
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
  examples: [
    {
      given: [1238.064, 102.346, 0.1078864, 0],
      gives: 953.78,
      within: 0.01,
      source: "by hand: 102.346 + 87141.27 / 102.346, the square of the radius of gyration over the distance",
    },
    {
      given: [1000, 500, 0.083333333, 0],
      gives: 666.6667,
      within: 1e-3,
      source: "mechanics texts: a uniform rod held at its end, two thirds of its length",
    },
  ],
});

export const EFFECTIVE_MASS = scalarFunction({
  name: "EFFECTIVE_MASS",
  topic: "Shape, mass and balance",
  summary:
    "Mass that a target feels where it is struck, rigid body: the whole at the balance, less toward the ends.",
  parameters: {
    ...body,
    at: number(position({ label: "at mm", help: "Place of impact in mm on the same axis as the balance." })),
  },
  result: { label: "effective mass", unit: "g" },
  relations: [IMPACT_MASS],
  compute: ({ at, ...rigid }) => effectiveMass(rigid, at),
  examples: [
    {
      given: [1238.064, 102.346, 0.1078864, 650],
      gives: 278.7,
      within: 0.05,
      source: "by hand: 1 / (1 / 1.238064 + 0.547654² / 0.1078864) kg",
    },
    {
      given: [1000, 300, 0.05, 300],
      gives: 1000,
      within: 1e-9,
      source: "by definition: all of it at the balance",
    },
  ],
});
