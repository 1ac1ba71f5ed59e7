import { askIfPercent, BINOMIAL_STARTS } from "../../core/run/starts";
import { type NumberOptions, optionalNumber, type Parameter } from "../parameters";

type Described = Pick<NumberOptions, "label" | "help">;

/** An amount in the sheet's own currency, from 0. */
export function money(options: Described): NumberOptions {
  return { quantity: "money", unit: "", min: 0, max: 1e9, ...options };
}

/** An amount that may be left out. */
export function extraMoney(label: string, help: string): Parameter<number> {
  return optionalNumber({ ...money({ label, help }), fallback: 0 });
}

/** A temperature of steel in °C. */
export function steelTemperature(options: Described): NumberOptions {
  return { quantity: "temperature", unit: "°C", above: 0, max: 2000, ...options };
}

export function kilograms(options: Described): NumberOptions {
  return { quantity: "mass", unit: "kg", min: 0.001, max: 1e6, ...options };
}

const { good: GOOD, yield: YIELD, confidence: CONFIDENCE } = BINOMIAL_STARTS.inputs;

/** A whole number of blades, as many as the binomial takes. */
export function blades(options: Described): NumberOptions {
  const { min, max } = GOOD;
  return { quantity: "count", unit: "", whole: true, min, max, ...options };
}

/** A share up to 1; 92 asks whether 0.92 was meant. */
export function share(options: Described & { readonly min?: number }): NumberOptions {
  return { quantity: "fraction", unit: "", min: 0.001, max: 1, askOver: askIfPercent, ...options };
}

export const yieldOptions: NumberOptions = {
  label: "yield",
  quantity: "fraction",
  unit: "",
  min: YIELD.min,
  max: YIELD.max,
  askOver: askIfPercent,
  help: "Share of the blades started that come out good, 0.92 or 92 %; from the shop's own counts.",
};

/** How sure to be, below 1; 95 asks whether 0.95 was meant. */
export function confidence(options: Pick<NumberOptions, "help">): NumberOptions {
  return {
    label: "confidence",
    quantity: "fraction",
    unit: "",
    above: CONFIDENCE.min,
    max: CONFIDENCE.max,
    askOver: askIfPercent,
    ...options,
  };
}
