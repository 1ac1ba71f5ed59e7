import { wordAsked } from "../word-list";
import { findGrind } from "./grinds";
import type { Section } from "./section";
import { type BladeProperties, bladeProperties, type Station } from "./stations";

/** A blade whose width and thickness run in a straight line from heel to tip. Lengths in mm. */
export interface Taper extends Section {
  /** Heel to tip, above 0 [mm]. */
  readonly length: number;
  /** Width at the tip; as at the heel where left out [mm]. */
  readonly tipWidth?: number | undefined;
  /** Thickness at the tip; as at the heel where left out [mm]. */
  readonly tipThickness?: number | undefined;
}

function scaled(value: number | undefined, share: number): number | undefined {
  return value === undefined ? undefined : value * share;
}

/**
 * The two stations of a tapered blade. The edge thickness and a wheel's radius are the same all along;
 * the bevel height and the flat keep their share of the width, a bulge its share of the thickness above
 * the edge, so that the section keeps its character to the tip.
 *
 * @param taper - Section at the heel, length, and width and thickness at the tip [mm]
 * @returns Heel and tip [mm]
 * Limits: checked by what reads the stations. Error and source: {@link STATION_MOMENTS}.
 */
export function taperStations(taper: Taper): readonly [Station, Station] {
  const grind = wordAsked(taper.grind, findGrind);
  const { length, width, thickness, edge = 0, bevelHeight, curve, flatWidth, ribHeight } = taper;
  const endWidth = taper.tipWidth ?? width;
  const endThickness = taper.tipThickness ?? thickness;
  const share = endWidth / width;
  const rise = thickness > edge ? Math.max(0, (endThickness - edge) / (thickness - edge)) : 1;
  // Every key is written out: copying the rest of an object costs more than the integration.
  return [
    { x: 0, grind, width, thickness, edge, bevelHeight, curve, flatWidth, ribHeight },
    {
      x: length,
      grind,
      width: endWidth,
      thickness: endThickness,
      edge,
      bevelHeight: scaled(bevelHeight, share),
      curve: grind.curve === "bulge" ? scaled(curve, rise) : curve,
      flatWidth: scaled(flatWidth, share),
      ribHeight,
    },
  ];
}

/**
 * Volume, mass, balance and inertia of a blade that tapers in a straight line.
 *
 * @param taper - Section at the heel, length, and width and thickness at the tip [mm]
 * @param density - 1 to 25 [g/cm³]; of a steel `densityOf(steel).value`
 * @returns Volume [mm³], mass [g], balance [mm], inertia about it [kg m²]
 * @throws InvalidValue for a density outside 1 to 25 g/cm³ or a section that cannot be, naming the place along the blade.
 * Error and source: {@link STATION_MOMENTS}.
 */
export function taperedBlade(taper: Taper, density: number): BladeProperties {
  return bladeProperties(taperStations(taper), density);
}
