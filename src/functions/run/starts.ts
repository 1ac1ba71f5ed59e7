import { askIfPercent, BINOMIAL_STARTS, startsNeeded } from "../../core/run/starts";
import { scalarFunction } from "../declare";
import { number, optionalNumber } from "../parameters";

export const STARTS = scalarFunction({
  name: "STARTS",
  summary: "How many blades to start so that enough come out good, with the confidence asked.",
  parameters: {
    good: number({
      label: "good",
      quantity: "count",
      unit: "",
      whole: true,
      min: 1,
      max: 10_000,
      help: "Good blades wanted, a whole number.",
    }),
    yield: number({
      label: "yield",
      quantity: "fraction",
      unit: "",
      min: 0.01,
      max: 1,
      askOver: askIfPercent,
      help: "Share of the blades started that come out good, 0.92 or 92 %; from the shop's own counts.",
    }),
    confidence: optionalNumber({
      label: "confidence",
      quantity: "fraction",
      unit: "",
      above: 0,
      max: 1,
      askOver: askIfPercent,
      fallback: 0.9,
      help: "Chance of having enough, up to 0.999999.",
    }),
  },
  result: { label: "starts", unit: "" },
  relations: [BINOMIAL_STARTS],
  compute: ({ good, yield: share, confidence }) => startsNeeded(good, share, confidence),
});
