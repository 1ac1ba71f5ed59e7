import { strengthOf } from "../hardness/strength";
import { checkRange, relation } from "../relation";
import { ELASTIC_MODULUS } from "../steel/elastic-modulus";

/** Bend radius at yield. */
export const BEND_TO_SET = relation({
  title: "Bend radius at which a blade would take a set",
  source: "pavlina-van-tyne-2008",
  locator: "E × thickness ÷ (2 × yield strength); E 207 GPa; yield from hardness",
  evidence: "fitted",
  inputs: {
    thickness: { label: "thickness", unit: "mm", min: 0, max: null },
    hrc: { label: "hardness", unit: "HRC", min: 20, max: 58 },
  },
  output: { label: "bend radius", unit: "mm" },
  error: { size: 17, unit: "%", kind: "yield strength ±14 % and elastic modulus ±3 %, taken together" },
  note:
    "Blade hardened through, without notches, bent evenly. It may break before it sets: this is not a radius " +
    "for a proof test. Hardness does not change the stiffness, only where the set begins.",
});

/**
 * Bend radius at which the surface of a hardened blade reaches its yield strength and would take a set.
 * It may break before it sets; this is not a radius for a proof test.
 *
 * @param thickness - At the thickest place of the bend [mm]
 * @param hrc - Hardness, 20 to 58 [HRC]
 * @param temperC - Temper [°C], where known: below 200 °C the blade takes a set earlier
 * @returns Radius [mm]
 * @throws NotAvailable outside that range: harder steel may yield earlier than its hardness says.
 * Error and source: {@link BEND_TO_SET}.
 */
export function setRadius(thickness: number, hrc: number, temperC?: number): number {
  checkRange(BEND_TO_SET, "hrc", hrc);
  return (ELASTIC_MODULUS * thickness) / (2 * strengthOf(hrc, "HRC", temperC).yieldMPa);
}
