import { InvalidValue } from "../../core/refusal";
import { DENOMINATORS, inchFraction } from "../../core/stock/inch-fraction";
import { scalarFunction } from "../declare";
import { number, optionalNumber } from "../parameters";

function checkDenominator(denominator: number): void {
  if (DENOMINATORS.includes(denominator)) return;
  throw new InvalidValue(`denominator: ${denominator} given; give one of ${DENOMINATORS.join(", ")}`);
}

export const FRACTION = scalarFunction({
  name: "FRACTION",
  topic: "Run, stock and money",
  summary: "A length as the nearest fraction of an inch; with 64ths it is at most 0.2 mm off.",
  parameters: {
    length: number({
      label: "length mm",
      quantity: "length",
      unit: "mm",
      min: 0,
      max: 30_000,
      help: "Length in mm.",
    }),
    denominator: optionalNumber({
      label: "denominator",
      quantity: "count",
      unit: "",
      whole: true,
      min: 1,
      max: 1000,
      fallback: 64,
      help: `Finest part of an inch: ${DENOMINATORS.join(", ")}.`,
    }),
  },
  result: { label: "inches", unit: "text" },
  relations: [],
  compute: ({ length, denominator }) => {
    checkDenominator(denominator);
    return inchFraction(length, denominator);
  },
  examples: [
    { given: [31.75], gives: "1 1/4", source: "by definition: 31.75 / 25.4 = 1.25" },
    { given: [4.7625], gives: "3/16", source: "by definition: 4.7625 / 25.4 = 0.1875" },
    { given: [5], gives: "13/64", source: "by hand: 5 / 25.4 × 64 = 12.6" },
    { given: [5, 16], gives: "3/16", source: "by hand: 5 / 25.4 × 16 = 3.15" },
    { given: [25.4], gives: "1", source: "by definition" },
  ],
});
