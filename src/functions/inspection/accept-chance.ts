import { acceptChance } from "../../core/inspection/accept-chance";
import { scalarFunction } from "../declare";
import { number, numberOrNothing } from "../parameters";

const COUNT = { quantity: "count", unit: "", max: 100_000, whole: true } as const;

export const ACCEPT_CHANCE = scalarFunction({
  name: "ACCEPT_CHANCE",
  summary: "Chance that a sampling plan passes a lot with a given fraction bad: what the plan lets through.",
  parameters: {
    sample: number({ ...COUNT, label: "sample", min: 1, help: "Pieces tested." }),
    accept: number({ ...COUNT, label: "accept", min: 0, help: "Most bad pieces allowed in the sample." }),
    fraction: number({
      label: "fraction bad",
      quantity: "fraction",
      unit: "",
      min: 0,
      max: 1,
      help: 'Fraction of the lot that is bad: 0.025 or "2.5 %".',
      askOver: (value) => `was ${value / 100} meant?`,
    }),
    lot: numberOrNothing({
      ...COUNT,
      label: "lot",
      min: 1,
      help: "Pieces in the lot, where the sample is a good part of it.",
    }),
  },
  result: { label: "chance", unit: "" },
  relations: [],
  compute: ({ sample, accept, fraction, lot }) => acceptChance(sample, accept, fraction, lot),
});
