import { BEST_STARTS, bestStarts } from "../../core/run/best-starts";
import { chanceOfEnough, ENOUGH } from "../../core/run/starts";
import { USUAL_FLOOR_CONFIDENCE, YIELD_BOUND, yieldFloor } from "../../core/run/yield-floor";
import { rowFunction, scalarFunction } from "../declare";
import { blades, confidence, money, yieldOptions } from "../money/arguments";
import { number, optionalNumber } from "../parameters";

export const CHANCE_OF_ENOUGH = scalarFunction({
  name: "CHANCE_OF_ENOUGH",
  summary: "Chance that a number of starts gives enough good blades.",
  parameters: {
    starts: number({ ...blades({ label: "starts", help: "Blades begun." }), max: 100_000 }),
    good: number(blades({ label: "good", help: "Good blades wanted." })),
    yield: number(yieldOptions),
  },
  result: { label: "chance", unit: "" },
  relations: [ENOUGH],
  compute: ({ starts, good, yield: share }) => chanceOfEnough(starts, good, share),
});

export const STARTS_BY_PROFIT = rowFunction({
  name: "STARTS_BY_PROFIT",
  summary: "How many to start of few and dear blades for the highest expected gain; compare with STARTS.",
  parameters: {
    good: number(blades({ label: "good", help: "Good blades ordered." })),
    yield: number(yieldOptions),
    cost: number({ ...money({ label: "cost", help: "Cost of one start." }), min: 0.01 }),
    price: number({ ...money({ label: "price", help: "Price of one good blade ordered." }), min: 0.01 }),
    spare: optionalNumber({
      ...money({ label: "spare", help: "What a good blade over the order brings." }),
      fallback: 0,
    }),
    penalty: optionalNumber({
      ...money({ label: "penalty", help: "Loss for each good blade that is missing, beside its price." }),
      fallback: 0,
    }),
  },
  result: [
    { label: "starts", unit: "" },
    { label: "expected gain", unit: "money" },
  ],
  relations: [BEST_STARTS],
  compute: (order) => {
    const { starts, gain } = bestStarts(order);
    return [starts, gain];
  },
});

export const YIELD_FLOOR = scalarFunction({
  name: "YIELD_FLOOR",
  summary: "Yield that the shop's own counts support: with the confidence asked, the true yield is higher.",
  parameters: {
    good: number({ ...blades({ label: "good", help: "Good blades so far." }), min: 0 }),
    tried: number(blades({ label: "tried", help: "Blades started so far." })),
    confidence: optionalNumber({
      ...confidence({ help: "Chance that the true yield is higher, below 1." }),
      fallback: USUAL_FLOOR_CONFIDENCE,
    }),
  },
  result: { label: "yield", unit: "" },
  relations: [YIELD_BOUND],
  compute: ({ good, tried, confidence }) => yieldFloor(good, tried, confidence),
});
