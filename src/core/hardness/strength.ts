import { NotAvailable } from "../refusal";
import { checkRange, type Relation, relation } from "../relation";
import { CONVERSION_TABLES, type ConversionTable } from "./conversion-tables";
import { CONVERSIONS, convertHardness, correspondence, readOff } from "./convert";
import type { ScaleKey } from "./scales";

/** Yield strength from Vickers hardness. */
export const YIELD_STRENGTH = relation({
  title: "Yield strength from hardness",
  source: "pavlina-van-tyne-2008",
  locator: "linear regression of yield strength, 150 steels of 300 to 1700 MPa",
  evidence: "fitted",
  inputs: { hv: { label: "Vickers hardness", unit: "HV", min: 136, max: 940 } },
  output: { label: "yield strength", unit: "MPa" },
  error: { size: 12, unit: "%", kind: "largest difference from O1 in compression, 50 to 62 HRC" },
  note: "Above 58 HRC, and for a temper below about 200 °C (392 °F), steel may yield earlier: the figure is a bound.",
});

const LOW_ALLOY = CONVERSION_TABLES[0] as ConversionTable;

/** Tensile strength by ISO 18265. */
export const TENSILE_STRENGTH = relation({
  ...(CONVERSIONS[0] as Relation),
  title: "Tensile strength from hardness",
  error: {
    size: 6,
    unit: "%",
    kind: "half-width that covers 90 % of two other tables and two measured steels, which read higher",
  },
});

export interface Strength {
  /** MPa; with `bounded` the figure at 58 HRC, which the steel should exceed. */
  readonly yieldMPa: number;
  readonly bounded: boolean;
  /** MPa, `undefined` above the hardness where the table stops. */
  readonly tensileMPa: number | undefined;
}

/** Hardness from which a yield strength is only a lower bound. */
const BOUND_HRC = 58;

/** Yield strength in MPa at a Vickers hardness. */
export function yieldStrength(hv: number): number {
  return 2.876 * hv - 90.7;
}

/**
 * Strength that a hardness stands for.
 *
 * @param value - Hardness in `scale`.
 * @returns Yield and tensile strength in MPa.
 * @throws NotAvailable outside the conversion table for low-alloy steel or below 136 HV.
 */
export function strengthOf(value: number, scale: ScaleKey): Strength {
  if (scale === "MPa") throw new NotAvailable("a tensile strength was given: give a hardness and its scale");
  const hv = scale === "HV" ? value : convertHardness(value, scale, "HV", LOW_ALLOY);
  checkRange(YIELD_STRENGTH, "hv", hv);
  const bound = convertHardness(BOUND_HRC, "HRC", "HV", LOW_ALLOY);
  return {
    yieldMPa: yieldStrength(Math.min(hv, bound)),
    bounded: hv > bound,
    tensileMPa: readOff(correspondence(LOW_ALLOY, "HV", "MPa"), hv),
  };
}
