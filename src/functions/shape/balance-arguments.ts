import type { NumberOptions } from "../parameters";

type Described = Pick<NumberOptions, "label" | "help">;

/** A mass in g. */
export function mass(options: Described): NumberOptions {
  return { quantity: "mass", unit: "g", min: 0.001, max: 1e6, ...options };
}

/** A place on the axis of the blade in mm; either side of the origin. */
export function position(options: Described): NumberOptions {
  return { quantity: "length", unit: "mm", min: -10_000, max: 10_000, ...options };
}

/** A length in mm that is not 0. */
export function size(options: Described): NumberOptions {
  return { quantity: "length", unit: "mm", min: 0.001, max: 10_000, ...options };
}

export const totalMass = mass({ label: "mass g", help: "Mass of the whole in g, or with its unit." });

export const balance = position({
  label: "balance mm",
  help: "Place of the balance in mm on the axis of the blade, for example from the guard toward the point.",
});

export const inertia: NumberOptions = {
  label: "inertia kg m²",
  quantity: "number",
  unit: "kg m²",
  min: 1e-12,
  max: 1000,
  help: "Inertia about the balance in kg m², as STATIONS, ASSEMBLY and SWING_INERTIA give it.",
};
