import { findGrind, GRINDS, type Grind, USUAL_GRIND } from "../../core/shape/grinds";
import { type NumberOptions, optionalText, type Parameter, type TextOptions } from "../parameters";

type Length = Omit<NumberOptions, "quantity" | "unit">;

/** Ten metres: longer than any blade, shorter than the day number a sheet makes of 3/16. */
const LONGEST_MM = 10_000;

/** A length in mm. */
export function length(options: Length): NumberOptions {
  return { quantity: "length", unit: "mm", max: LONGEST_MM, ...options };
}

/** Under these, in mm, no blade is made: a bare figure so small is asked about (3/8 in is 0.375, 20 in is 20). */
export const INCHES_UNDER = { length: 25, width: 3, thickness: 0.4 } as const;

export const grindOptions: TextOptions<Grind> = {
  label: "grind",
  kind: "grind",
  help: "Cross-section, one of the words that GRINDS() lists.",
  accepts: 'a grind such as "flat", "hollow" or "diamond"; GRINDS() lists them',
  words: GRINDS.map(({ word }) => word),
  find: findGrind,
};

/** The grind where it may be left out. */
export const optionalGrind: Parameter<Grind> = optionalText({ ...grindOptions, fallback: USUAL_GRIND });

export const widthOptions = {
  label: "width",
  help: "Spine to edge, or edge to edge, in mm; of the body under the rib for a T-back.",
};

export const thicknessOptions = {
  label: "thickness",
  help: "At the spine, or in the middle of a double-edged blade, in mm.",
};

export const edgeOptions = length({
  label: "edge",
  min: 0,
  help: "Thickness behind the edge in mm; 0 where it is ground to nothing.",
});

export const bevelOptions = {
  label: "bevel height",
  help: "Height of the bevel from the edge, across the width, in mm; part flat needs it, hollow, convex and chisel take the whole width where it is left out.",
};

/** Flat of a hexagonal section or rib of a T-back. */
export const flatOptions = length({
  label: "flat or rib width",
  above: 0,
  help: "Hexagonal: width of the flat along the middle, in mm. T-back: width of the rib across the blade's thickness, in mm.",
});

export const ribOptions = length({
  label: "rib height",
  above: 0,
  help: "T-back: height of the rib above the body, in mm.",
});

export const curveOptions = {
  label: "radius or bulge",
  help: "Hollow: radius of the wheel in mm (half its diameter). Convex: height of the bulge over a straight bevel in mm.",
};
