import { strengthOf } from "../hardness/strength";
import { checkRange } from "../relation";
import { BEND_TO_SET } from "./balance-relations";

/** MPa. */
const ELASTIC_MODULUS = 205_000;

/**
 * Bend radius at which the surface of a hardened blade reaches its yield strength and would take a set.
 * It may break before it sets; this is not a radius for a proof test.
 *
 * @param thickness - At the thickest place of the bend [mm]
 * @param hrc - Hardness, 20 to 58 HRC
 * @returns Radius [mm]
 * @throws NotAvailable outside that range: harder steel may yield earlier than its hardness says.
 */
export function setRadius(thickness: number, hrc: number): number {
  checkRange(BEND_TO_SET, "hrc", hrc);
  return (ELASTIC_MODULUS * thickness) / (2 * strengthOf(hrc, "HRC").yieldMPa);
}
