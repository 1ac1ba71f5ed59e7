import { InvalidValue } from "../../core/refusal";
import { SECTION_AREA } from "../../core/shape/section-area";
import { STATION_MOMENTS } from "../../core/shape/stations";
import { taperedBlade } from "../../core/shape/taper";
import { densityRelations } from "../../core/steel/density";
import { scalarFunction } from "../declare";
import { number, numberOrNothing, optionalNumber } from "../parameters";
import { steelOrDensity } from "./density-argument";
import {
  bevelOptions,
  curveOptions,
  edgeOptions,
  flatOptions,
  INCHES_UNDER,
  length,
  optionalGrind,
  ribOptions,
  thicknessOptions,
  widthOptions,
} from "./lengths";

/** An empty cell may arrive as 0, and 0 may also mean a point: neither is guessed. */
function notZero(value: number | undefined, label: string): number | undefined {
  if (value !== 0) return value;
  throw new InvalidValue(
    `${label}: 0 mm given, which an empty cell may also look like; for a point give 0.1 mm, ` +
      "for no taper the figure at the heel",
  );
}

export const MASS = scalarFunction({
  name: "MASS",
  summary: "Mass of a blade whose width and thickness each taper in a straight line from heel to tip.",
  parameters: {
    length: number(
      length({ label: "length", above: 0, inchesUnder: INCHES_UNDER.length, help: "Heel to tip, in mm." }),
    ),
    width: number(length({ ...widthOptions, above: 0, inchesUnder: INCHES_UNDER.width })),
    thickness: number(length({ ...thicknessOptions, above: 0, inchesUnder: INCHES_UNDER.thickness })),
    grind: optionalGrind,
    tipWidth: numberOrNothing(
      length({ label: "tip width", min: 0, help: "Width at the tip in mm; as at the heel where left out." }),
    ),
    tipThickness: numberOrNothing(
      length({
        label: "tip thickness",
        min: 0,
        help: "Thickness at the tip in mm; as at the heel where left out.",
      }),
    ),
    edge: optionalNumber({ ...edgeOptions, fallback: 0 }),
    density: steelOrDensity,
    bevelHeight: numberOrNothing(
      length({
        ...bevelOptions,
        above: 0,
        help: `${bevelOptions.help} At the heel; it keeps its share of the width.`,
      }),
    ),
    curve: numberOrNothing(
      length({
        ...curveOptions,
        above: 0,
        help: `${curveOptions.help} A radius is the same all along; a bulge keeps its share of the thickness.`,
      }),
    ),
    flatWidth: numberOrNothing(flatOptions),
    ribHeight: numberOrNothing(ribOptions),
  },
  result: { label: "mass", unit: "g" },
  relations: (steel) => [STATION_MOMENTS, SECTION_AREA, ...densityRelations(steel)],
  compute: ({ tipWidth, tipThickness, density, ...blade }) =>
    taperedBlade(
      {
        ...blade,
        tipWidth: notZero(tipWidth, "tip width"),
        tipThickness: notZero(tipThickness, "tip thickness"),
      },
      density,
    ).mass,
});
