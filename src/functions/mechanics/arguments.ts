import { quantityText } from "../../core/quantity-text";
import { InvalidValue } from "../../core/refusal";
import type { Station } from "../../core/shape/stations";
import { type NumberOptions, numberOrNothing, optionalNumber } from "../parameters";
import { position } from "../shape/balance-arguments";

/** Where the blade is held: at 0, the guard or the heel, where left out. */
export const heldAt = optionalNumber({
  ...position({
    label: "held at mm",
    help: "Where the blade is held rigidly, in the x of the stations in mm.",
  }),
  fallback: 0,
});

/** Where it is loaded; where left out, at its tip. */
export const loadAt = numberOrNothing(
  position({
    label: "load at mm",
    help: "Where it is loaded, in the x of the stations in mm; the tip where left out.",
  }),
);

export const angle: NumberOptions = {
  label: "angle a side",
  quantity: "angle",
  unit: "°",
  min: 3,
  max: 40,
  help: "Angle of the edge bevel a side in degrees: half the included angle.",
  askOver: (given) => `was the included angle meant? Half of it is ${quantityText(given / 2, "°")}`,
};

export const contact = optionalNumber({
  label: "contact mm",
  quantity: "length",
  unit: "mm",
  min: 0.001,
  max: 5,
  fallback: 0.1,
  help: "How deep from the apex the load touches, in mm.",
});

/** The place of the load: the tip where it is left out, or 0 in an empty cell of Excel for Windows. */
export function loadPlace(stations: readonly Station[], held: number, load: number | undefined): number {
  const isLeftOut = load === undefined || (load === 0 && held >= 0);
  return isLeftOut ? (stations.at(-1)?.x ?? 0) : load;
}

/** A figure that stands behind optional arguments and yet is needed. */
export function needed(value: number | undefined, label: string, accepts: string): number {
  if (value !== undefined) return value;
  throw new InvalidValue(`${label}: nothing given; give ${accepts}`);
}
