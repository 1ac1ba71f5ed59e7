import type { Section } from "./section";
import { type BladeProperties, bladeProperties, type Station } from "./stations";

/** A blade whose width and thickness run in a straight line from heel to tip. Lengths in mm. */
export interface Taper extends Section {
  readonly length: number;
  /** At the tip; as at the heel where left out. */
  readonly tipWidth?: number | undefined;
  readonly tipThickness?: number | undefined;
}

function scaled(value: number | undefined, share: number): number | undefined {
  return value === undefined ? undefined : value * share;
}

/**
 * The two stations of a tapered blade. The edge thickness and a wheel's radius are the same all along;
 * the bevel height and the flat keep their share of the width, a bulge its share of the thickness above
 * the edge, so that the section keeps its character to the tip.
 */
export function taperStations(taper: Taper): readonly [Station, Station] {
  const { length, tipWidth, tipThickness, ...heel } = taper;
  const { width, thickness, edge = 0, curve } = heel;
  const endWidth = tipWidth ?? width;
  const endThickness = tipThickness ?? thickness;
  const share = endWidth / width;
  const rise = thickness > edge ? (endThickness - edge) / (thickness - edge) : 1;
  const tip: Station = {
    ...heel,
    x: length,
    width: endWidth,
    thickness: endThickness,
    bevelHeight: scaled(heel.bevelHeight, share),
    curve: heel.grind.curve === "bulge" ? scaled(curve, Math.max(0, rise)) : curve,
    flatWidth: scaled(heel.flatWidth, share),
  };
  return [{ ...heel, x: 0 }, tip];
}

/**
 * Volume, mass, balance and inertia of a blade that tapers in a straight line.
 *
 * @param taper - Section at the heel, length, and width and thickness at the tip [mm]
 * @param density - [g/cm³]
 * @throws InvalidValue for a section that cannot be, naming the place along the blade.
 */
export function taperedBlade(taper: Taper, density: number): BladeProperties {
  return bladeProperties(taperStations(taper), density);
}
