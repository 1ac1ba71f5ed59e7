import { type NumberOptions, number, numberOrNothing } from "../parameters";

const options: NumberOptions = {
  label: "harden C",
  quantity: "temperature",
  unit: "°C",
  min: 600,
  max: 1300,
  help: "Hardening temperature of the steel itself in °C.",
};

/** The hardening temperature, required. */
export const hardenC = number(options);

/** The hardening temperature; left out, the usual one of the steel. */
export const usualHardenC = numberOrNothing({
  ...options,
  help: "Hardening temperature of the steel itself in °C; where left out, the usual one of the steel.",
});
