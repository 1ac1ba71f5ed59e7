import { MONEY } from "../../core/money/relations";
import { ROUNDING_RULES, roundMoney } from "../../core/money/rounding";
import { choice } from "../choice";
import { scalarFunction } from "../declare";
import { number, optionalNumber } from "../parameters";

export const ROUND_MONEY = scalarFunction({
  name: "ROUND_MONEY",
  topic: "Run, stock and money",
  summary: "An amount rounded to a step as it would be on paper; round once, at the price.",
  parameters: {
    value: number({
      label: "value",
      quantity: "money",
      unit: "",
      min: -1e9,
      max: 1e9,
      help: "Amount, unrounded.",
    }),
    step: optionalNumber({
      label: "step",
      quantity: "money",
      unit: "",
      min: 0.0001,
      max: 1e6,
      fallback: 0.01,
      help: "Smallest step of the price: 0.01, 0.05, 5.",
    }),
    rule: choice({
      label: "rule",
      words: ROUNDING_RULES,
      help: "half up (away from 0), half even, up or down.",
    }),
  },
  result: { label: "amount", unit: "money" },
  relations: [MONEY],
  compute: ({ value, step, rule }) => roundMoney(value, step, rule),
  examples: [
    { given: [1.005], gives: 1.01, source: "by hand on the decimal typed" },
    { given: [2.675], gives: 2.68, source: "by hand on the decimal typed" },
    { given: [2.665, 0.01, "half even"], gives: 2.66, source: "by hand: 266.5 goes to the even 266" },
    { given: [297.88, 5], gives: 300, source: "by hand: 59.576 steps" },
  ],
});
