import { type NumberOptions, numberOrNothing } from "../parameters";

/** The hardness that a yield strength is taken from. */
export const yieldHardness: NumberOptions = {
  label: "HRC",
  quantity: "hardness",
  unit: "HRC",
  above: 0,
  max: 70,
  help: "Hardness of the blade where it is most strained.",
};

/** The temper, where known, that a yield strength is corrected by. */
export const yieldTemper = numberOrNothing({
  label: "temper C",
  quantity: "temperature",
  unit: "°C",
  above: 0,
  max: 1300,
  help: "Temper of the steel in °C, where known: below 200 °C it yields earlier than its hardness says.",
});
