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
});
