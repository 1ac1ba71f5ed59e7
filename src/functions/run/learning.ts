import { LEARNING_ANSWERS, LEARNING_CURVE, nthHours, totalHours } from "../../core/run/learning";
import { choice, requiredChoice } from "../choice";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { learningRate, modelOptions } from "./learning-arguments";

export const LEARNING = scalarFunction({
  name: "LEARNING",
  summary:
    "Hours of the nth piece, or of all pieces up to it, where hours fall with practice; the model must be named.",
  parameters: {
    first: number({
      label: "first h",
      quantity: "time",
      unit: "h",
      min: 0.0001,
      max: 100_000,
      help: "Hours of the first piece.",
    }),
    n: number({
      label: "n",
      quantity: "count",
      unit: "",
      whole: true,
      min: 1,
      max: 1_000_000,
      help: "Which piece, or how many.",
    }),
    rate: number(
      learningRate(
        "Share of the hours left each time the count doubles: 0.92 to 0.97 for a known pattern, 0.85 to 0.9 for a new one.",
      ),
    ),
    model: requiredChoice(modelOptions),
    what: choice({
      label: "what",
      words: LEARNING_ANSWERS,
      help: "nth: hours of that piece; total: hours of all up to it.",
    }),
  },
  result: { label: "hours", unit: "h" },
  relations: [LEARNING_CURVE],
  compute: ({ n, what, ...curve }) => (what === "nth" ? nthHours(curve, n) : totalHours(curve, n)),
});
