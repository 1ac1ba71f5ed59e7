import { quantityText } from "../quantity-text";
import { NotAvailable, Refusal } from "../refusal";
import type { Station } from "../shape/stations";
import { bladeOf } from "./beam";
import { heldBlade } from "./flex";
import { rootBetween } from "./root";

/** The thickness is looked for between a quarter and four times what was given. */
const LARGEST_FACTOR = 4;

/** Stiffness does not depend on the density. */
const ANY_DENSITY = 7.85;

export interface FlexThickness {
  /** On every thickness given; the edge stays as it is [-]. */
  readonly factor: number;
  /** Thickness of the first station [mm]. */
  readonly heel: number;
}

function thickened(stations: readonly Station[], factor: number): Station[] {
  return stations.map((station) => ({ ...station, thickness: station.thickness * factor }));
}

function stiffnessOf(
  stations: readonly Station[],
  factor: number,
  held: number,
  load: number,
): number | undefined {
  try {
    return heldBlade(bladeOf(thickened(stations, factor), ANY_DENSITY), held, load).stiffness;
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}

/** Goes thicker or thinner from the blade as given until the stiffness wanted is passed, or no such blade can be ground. */
function bracket(
  stiffness: (factor: number) => number | undefined,
  asGiven: number,
  wanted: number,
): number | undefined {
  const stiffer = wanted > asGiven;
  const farthest = stiffer ? LARGEST_FACTOR : 1 / LARGEST_FACTOR;
  const next = (factor: number) =>
    stiffer ? Math.min(farthest, factor * 1.25) : Math.max(farthest, factor * 0.8);
  for (let factor = 1; ; factor = next(factor)) {
    const there = stiffness(factor);
    if (there === undefined) return undefined;
    if (stiffer === there >= wanted || there === wanted) return factor;
    if (factor === farthest) return undefined;
  }
}

/**
 * How much thicker or thinner a blade must be for a stiffness: one factor on every thickness, the edge,
 * widths, wheel and fullers left as they are.
 *
 * @param stations - From heel to tip [mm]
 * @param wanted - Stiffness at the load [N/mm]
 * @param held - Where it is held [mm]
 * @param load - Where it is loaded [mm]
 * @returns Factor on every thickness, and the thickness of the first station with it [mm]
 * @throws InvalidValue for places or stations that cannot be; NotAvailable beyond a factor of 4, or where no such
 * section can be ground.
 * Error and source: {@link BLADE_FLEX}, of which it is the inverse.
 */
export function thicknessForFlex(
  stations: readonly Station[],
  wanted: number,
  held: number,
  load: number,
): FlexThickness {
  const { stiffness: asGiven } = heldBlade(bladeOf(stations, ANY_DENSITY), held, load);
  const stiffness = (factor: number) => stiffnessOf(stations, factor, held, load);
  const far = bracket(stiffness, asGiven, wanted);
  if (far === undefined) {
    throw new NotAvailable(
      `${quantityText(wanted, "N/mm")} wanted, ${quantityText(asGiven, "N/mm")} as given: no thickness from a quarter ` +
        "to four times these stations gives it; change the width or the length",
    );
  }
  const excess = (factor: number) => (stiffness(factor) ?? Number.NaN) / wanted - 1;
  const factor = far === 1 ? 1 : rootBetween(excess, 1, far, { tolerance: 1e-10, within: 1e-11 });
  return { factor, heel: (stations[0]?.thickness ?? 0) * factor };
}
