import { MONEY } from "../../core/money/price";
import { priceBreak } from "../../core/money/price-break";
import { LEARNING_CURVE } from "../../core/run/learning";
import { askIfPercent, BINOMIAL_STARTS, USUAL_CONFIDENCE } from "../../core/run/starts";
import { requiredChoice } from "../choice";
import { rowFunction } from "../declare";
import { number, optionalNumber } from "../parameters";
import { learningRate, modelOptions } from "../run/learning-arguments";
import { blades, confidence, extraMoney, money, yieldOptions } from "./arguments";

export const PRICE_BREAKS = rowFunction({
  name: "PRICE_BREAKS",
  summary:
    "Unit cost and price for each quantity of a list: set-up shared, hours that fall, minimum charge and losses counted.",
  parameters: {
    quantity: number(blades({ label: "quantity", help: "Good pieces; a column of quantities to compare." })),
    setUp: number(money({ label: "set-up", help: "Paid once a lot; 0 for none." })),
    hoursFirst: number({
      label: "first h",
      quantity: "time",
      unit: "h",
      min: 0,
      max: 100_000,
      help: "Bench hours of the first piece.",
    }),
    rate: number(
      learningRate("Share of the hours left each time the count doubles; 1 where they do not fall."),
    ),
    model: requiredChoice(modelOptions),
    hourRate: number(money({ label: "hour rate", help: "Cost of one bench hour." })),
    material: number(money({ label: "material", help: "Steel, belts and the like for one start." })),
    outsideRate: extraMoney("outside rate", "An outside shop's charge for one piece sent."),
    outsideMinimum: extraMoney("outside minimum", "Its least charge for a lot."),
    outsideSetUp: extraMoney("outside set-up", "What it charges once on top."),
    margin: optionalNumber({
      label: "margin",
      quantity: "fraction",
      unit: "",
      min: 0,
      max: 0.99,
      askOver: askIfPercent,
      fallback: 0,
      help: "Share of the price that is left after the cost, 0.35 or 35 %.",
    }),
    step: optionalNumber({
      ...money({ label: "step", help: "Smallest step of the price." }),
      min: 0.01,
      fallback: 0.01,
    }),
    yieldShare: optionalNumber({ ...yieldOptions, fallback: 1 }),
    confidence: optionalNumber({
      ...confidence({ help: "Chance of having enough good ones, below 1." }),
      fallback: USUAL_CONFIDENCE,
    }),
  },
  result: [
    { label: "quantity", unit: "" },
    { label: "starts", unit: "" },
    { label: "hours", unit: "h" },
    { label: "outside", unit: "money" },
    { label: "cost of the lot", unit: "money" },
    { label: "unit cost", unit: "money" },
    { label: "price", unit: "money" },
  ],
  relations: [BINOMIAL_STARTS, LEARNING_CURVE, MONEY],
  compute: ({ quantity, ...terms }) => {
    const { starts, hours, outside, cost, unitCost, price } = priceBreak(quantity, terms);
    return [quantity, starts, hours, outside, cost, unitCost, price];
  },
});
