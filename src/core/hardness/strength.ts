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
  error: {
    size: 17,
    unit: "%",
    kind: "half-width that covers 90 % of 92 measured rows of 32 to 60 HRC, none in the fit",
  },
  note: "Above 58 HRC, and for a temper below about 200 °C (392 °F), steel may yield earlier: the figure is a bound.",
});

/** Yield strength from hardness and temper. */
export const YIELD_RATIO = relation({
  title: "Yield strength by temper",
  source: "strength-by-temper",
  locator: "shares at five tempers, straight between",
  evidence: "fitted",
  inputs: { temperC: { label: "temper", unit: "°C", min: 90, max: 700 } },
  output: { label: "yield strength", unit: "MPa" },
  error: {
    size: 16,
    unit: "%",
    kind: "half-width that covers 90 % of 92 measured rows, 63 of them cited and not held, each source left out of its own fit",
  },
  note:
    "Shares: 0.53 at 90 °C (194 °F), 0.70 at 150 °C (302 °F), 0.87 at 205 °C (401 °F), 0.90 from 415 °C (779 °F). One steel " +
    "each stands behind 90 and 150 °C: below 200 °C (392 °F) steel yields early, and how early is rough.",
});

const RATIOS = [
  [90, 0.53],
  [150, 0.7],
  [205, 0.87],
  [300, 0.875],
  [415, 0.9],
] as const;

function ratioAt(temperC: number): number {
  checkRange(YIELD_RATIO, "temperC", temperC);
  const above = RATIOS.findIndex(([celsius]) => celsius >= temperC);
  if (above < 0) return RATIOS[RATIOS.length - 1]?.[1] ?? 1;
  const [right, rightRatio] = RATIOS[above] as (typeof RATIOS)[number];
  const [left, leftRatio] = RATIOS[Math.max(0, above - 1)] as (typeof RATIOS)[number];
  return right === left
    ? rightRatio
    : leftRatio + ((temperC - left) / (right - left)) * (rightRatio - leftRatio);
}

const LOW_ALLOY = CONVERSION_TABLES[0] as ConversionTable;

/** Tensile strength by ISO 18265. */
export const TENSILE_STRENGTH = relation({
  ...(CONVERSIONS[0] as Relation),
  title: "Tensile strength from hardness",
  error: {
    size: 7,
    unit: "%",
    kind: "half-width that covers 90 % of 92 measured rows of 32 to 60 HRC, each source left out of its own fit",
  },
  note: "The table of the standard up to 400 HV; from 440 HV a line through measured rows, -94 + 3.494 HV; between the two a blend.",
});

export interface Strength {
  /** Yield strength; with `bounded` that at 58 HRC, which the steel should exceed [MPa]. */
  readonly yieldMPa: number;
  /** True where the yield strength is a lower bound. */
  readonly bounded: boolean;
  /** Tensile strength [MPa]; `undefined` above the hardness where the table stops. */
  readonly tensileMPa: number | undefined;
}

/** Hardness from which a yield strength is only a lower bound. */
const BOUND_HRC = 58;

/**
 * Yield strength at a Vickers hardness.
 *
 * @param hv - Vickers hardness [HV]
 * @returns [MPa]
 * Limits: none are checked here; `strengthOf` holds the relation's.
 * Error and source: {@link YIELD_STRENGTH}.
 */
export function yieldStrength(hv: number): number {
  return 2.876 * hv - 90.7;
}

/** The table reads 3.5 % low on hard steel: from here on the line through measured rows stands [HV]. */
const BLEND = { from: 400, to: 440 };

function tensileStrength(hv: number): number | undefined {
  const table = readOff(correspondence(LOW_ALLOY, "HV", "MPa"), hv);
  if (table === undefined) return undefined;
  const share = Math.min(1, Math.max(0, (hv - BLEND.from) / (BLEND.to - BLEND.from)));
  return (1 - share) * table + share * (3.494 * hv - 94);
}

/** Yield strength [MPa] up to the hardness from which it is a bound. */
function yieldAt(hv: number, temperC: number | undefined): number {
  if (temperC === undefined) return yieldStrength(hv);
  return ratioAt(temperC) * (tensileStrength(hv) ?? 3.494 * hv - 94);
}

/**
 * Strength that a hardness stands for.
 *
 * @param value - Hardness in `scale` [HRC, HV, HB ...]
 * @param scale - Any scale but MPa.
 * @param temperC - Temper, 90 to 700 [°C]; left out, yield is that of a usual temper of 200 °C and more.
 * @returns Yield and tensile strength [MPa]
 * @throws NotAvailable outside the conversion table for low-alloy steel or below 136 HV.
 * Error and source: {@link YIELD_STRENGTH}, {@link YIELD_RATIO}, {@link TENSILE_STRENGTH}.
 */
export function strengthOf(value: number, scale: ScaleKey, temperC?: number): Strength {
  if (scale === "MPa") throw new NotAvailable("a tensile strength was given: give a hardness and its scale");
  const hv = scale === "HV" ? value : convertHardness(value, scale, "HV", LOW_ALLOY);
  checkRange(YIELD_STRENGTH, "hv", hv);
  const bound = convertHardness(BOUND_HRC, "HRC", "HV", LOW_ALLOY);
  return {
    yieldMPa: yieldAt(Math.min(hv, bound), temperC),
    bounded: hv > bound,
    tensileMPa: tensileStrength(hv),
  };
}
