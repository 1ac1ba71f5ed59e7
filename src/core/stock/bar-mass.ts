import { densityOf } from "../steel/density";
import type { Steel } from "../steel/steel";

/** g/cm³ times mm³ makes mg. */
const MILLIGRAMS_PER_KG = 1e6;
/** A bar weighed on a shop scale is still a bar: stock counts as whole bars from this share of one less. */
const WEIGHING = 0.02;

/** Mass of a bar in kg, from its cross-section in mm² and its length in mm. */
export function barMass(steel: Steel, area: number, length: number): number {
  return (area * length * densityOf(steel).value) / MILLIGRAMS_PER_KG;
}

/** How many bars a mass in the rack is, in kg. */
export function wholeBars(kilograms: number, barKilograms: number): number {
  return Math.floor(kilograms / barKilograms + WEIGHING);
}
