import { askIfPercent, BINOMIAL_STARTS, startsNeeded, USUAL_CONFIDENCE } from "../../core/run/starts";
import { scalarFunction } from "../declare";
import { blades, confidence, yieldOptions } from "../money/arguments";
import { number, optionalNumber } from "../parameters";

export const STARTS = scalarFunction({
  name: "STARTS",
  summary: "How many blades to start so that enough come out good, with the confidence asked.",
  parameters: {
    good: number(blades({ label: "good", help: "Good blades wanted, a whole number." })),
    yield: number(yieldOptions),
    confidence: optionalNumber({
      ...confidence({ help: "Chance of having enough, up to 0.999999." }),
      askOver: (value) => (value <= 1 ? "no number of starts makes it certain" : askIfPercent(value)),
      fallback: USUAL_CONFIDENCE,
    }),
  },
  result: { label: "starts", unit: "" },
  relations: [BINOMIAL_STARTS],
  compute: ({ good, yield: share, confidence }) => startsNeeded(good, share, confidence),
});
