import { MONEY } from "../../core/money/price";
import { ROUNDING_RULES, roundMoney } from "../../core/money/rounding";
import { choice } from "../choice";
import { scalarFunction } from "../declare";
import { number, optionalNumber } from "../parameters";

export const ROUND_MONEY = scalarFunction({
  name: "ROUND_MONEY",
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
});
