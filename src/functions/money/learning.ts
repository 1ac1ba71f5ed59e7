import { type LearningAnswer, type LearningModel, nthHours, totalHours } from "../../core/money/learning";
import { LEARNING_CURVE } from "../../core/money/relations";
import { askIfPercent } from "../../core/run/starts";
import { choice, requiredChoice } from "../choice";
import { scalarFunction } from "../declare";
import { number } from "../parameters";

const MODELS: readonly LearningModel[] = ["unit", "average"];
const ANSWERS: readonly LearningAnswer[] = ["nth", "total"];

export const LEARNING = scalarFunction({
  name: "LEARNING",
  topic: "Run, stock and money",
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
    rate: number({
      label: "rate",
      quantity: "fraction",
      unit: "",
      min: 0.5,
      max: 1,
      askOver: askIfPercent,
      help: "Share of the hours left each time the count doubles: 0.92 to 0.97 for a known pattern, 0.85 to 0.9 for a new one.",
    }),
    model: requiredChoice({
      label: "model",
      words: MODELS,
      aliases: { crawford: "unit", wright: "average", "cumulative average": "average" },
      help: "unit (Crawford): the rate is that of single pieces; average (Wright): of the mean of all so far.",
    }),
    what: choice({
      label: "what",
      words: ANSWERS,
      help: "nth: hours of that piece; total: hours of all up to it.",
    }),
  },
  result: { label: "hours", unit: "h" },
  relations: [LEARNING_CURVE],
  compute: ({ n, what, ...curve }) => (what === "nth" ? nthHours(curve, n) : totalHours(curve, n)),
  examples: [
    {
      given: [100, 125, 0.85, "unit"],
      gives: 32.23647,
      within: 5e-6,
      source: "learning-curve reference pages, unit model",
    },
    {
      given: [110, 2200, 0.885, "average"],
      gives: 23.34001,
      within: 5e-6,
      source: "learning-curve reference pages, cumulative average model",
    },
    {
      given: [100, 125, 0.85, "unit", "total"],
      gives: 5201.085,
      within: 5e-4,
      source: "learning-curve reference pages, exact cumulative",
    },
    {
      given: [1, 2, 0.8, "average"],
      gives: 0.6,
      within: 1e-9,
      source: "Wideman, appendix 2: at 80 % the second unit takes 60 %",
    },
  ],
});
