import { BLADE_SECTION, bladeOf } from "../../core/mechanics/beam";
import type { Fitting } from "../../core/mechanics/free-blade";
import { BLADE_RING, ring } from "../../core/mechanics/ring";
import { InvalidValue } from "../../core/refusal";
import { densityRelations } from "../../core/steel/density";
import { STEEL_MODULUS } from "../../core/steel/elastic-modulus";
import { rowFunction } from "../declare";
import { numberOrNothing, rangeParameter } from "../parameters";
import { position } from "../shape/balance-arguments";
import { flatParameters, stationParameters, stationsOf } from "../shape/station-arguments";

interface FittingLists {
  readonly mass: readonly (number | undefined)[];
  readonly position: readonly (number | undefined)[];
  readonly inertia: readonly (number | undefined)[];
}

/** Rows without a mass are empty rows of the table that the columns come from. */
function fittingsOf({ mass, position, inertia }: FittingLists): Fitting[] {
  return mass.flatMap((grams, row) => {
    if (grams === undefined || grams === 0) return [];
    const at = position[row];
    if (at !== undefined) return [{ mass: grams, position: at, inertia: inertia[row] ?? 0 }];
    throw new InvalidValue(`fitting ${row + 1} of ${grams} g has no place: give its position in mm`);
  });
}

export const RING = rowFunction({
  name: "RING",
  takesLong: true,
  summary:
    "First two bending frequencies of a free blade with its fittings, and the quiet points of the first: where it hardly moves when it rings.",
  parameters: {
    ...stationParameters,
    fittingMass: rangeParameter(
      numberOrNothing({
        label: "fitting mass g",
        quantity: "mass",
        unit: "g",
        min: 0,
        max: 1e6,
        help: "Mass of each fitting (guard, grip, pommel) in g, a column.",
      }),
    ),
    fittingPosition: rangeParameter(
      numberOrNothing(
        position({
          label: "fitting position mm",
          help: "Balance of each fitting in the x of the stations, in mm.",
        }),
      ),
    ),
    fittingInertia: rangeParameter(
      numberOrNothing({
        label: "fitting inertia kg m²",
        quantity: "number",
        unit: "kg m²",
        min: 0,
        max: 1000,
        help: "Inertia of each fitting about its own balance in kg m²; nothing for a small one.",
      }),
    ),
    ...flatParameters,
  },
  result: [
    { label: "first frequency", unit: "Hz" },
    { label: "quiet point near the heel", unit: "mm" },
    { label: "quiet point near the tip", unit: "mm" },
    { label: "second frequency", unit: "Hz" },
  ],
  relations: (steel) => [BLADE_RING, BLADE_SECTION, STEEL_MODULUS, ...densityRelations(steel)],
  compute: ({ density, fittingMass, fittingPosition, fittingInertia, ...lists }) => {
    const fittings = fittingsOf({ mass: fittingMass, position: fittingPosition, inertia: fittingInertia });
    const { first, second, quietNearHeel, quietNearTip } = ring(
      bladeOf(stationsOf(lists), density),
      fittings,
    );
    return [first, quietNearHeel ?? "beyond the heel", quietNearTip ?? "beyond the tip", second];
  },
});
