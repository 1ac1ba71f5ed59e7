import { numberText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import { relation } from "../relation";
import { carbonOf } from "../steel/carbon";
import { elements } from "../steel/element-ranges";
import type { Steel } from "../steel/steel";
import { dissolvedAt } from "./dissolved";
import { initialHardness } from "./initial-hardness";
import { HRC_PER_PERCENT_AUSTENITE } from "./martensite";
import { retainedAt } from "./retained";
import { STAINLESS_FIT } from "./stainless-fit";

/** Hardness of martensitic stainless steel after the quench and after temper. */
export const STAINLESS_HARDNESS = relation({
  title: "Hardness of martensitic stainless steel from dissolved carbon, hardening temperature and temper",
  source: "stainless-hardness-fit",
  locator:
    "hardness of the martensite, carbide and retained austenite, less a softening that all grades share",
  evidence: "fitted",
  inputs: {
    hardenC: { label: "hardening temperature", unit: "°C", min: 950, max: 1120 },
    temperC: { label: "temper", unit: "°C", min: 100, max: 650 },
    ...elements({ C: [0.08, 1.25], N: [0, 0.5], Cr: [10.5, 18.5], Ni: [0, 2.5], Mo: [0, 1.8], V: [0, 0.2] }),
  },
  output: { label: "hardness", unit: "HRC" },
  error: {
    size: STAINLESS_FIT.halfWidth,
    unit: "HRC",
    kind: "half-width that covers 90 % of rows of sources that took no part in the fit",
  },
  note:
    "Nitrogen counts as carbon: no row of a nitrogen grade was read, so its figure is an estimate. The rows hold up to 0.38 % C in solution; " +
    "beyond, ±4 HRC: recalled figures of 0.65 % C, 13 % Cr strip lie 1 to 4 HRC lower.",
});

/** Families whose chromium hardens: an analysis of 10.5 to 18 % Cr counts as martensitic. */
export function isMartensiticStainless({ family, composition: { Cr, C } }: Steel): boolean {
  return family === "martensitic stainless" && Cr >= 10.5 && !(C > STAINLESS_HARDNESS.inputs.C.max);
}

/** Where the quench of a blade ends, without a freezer [°C]. */
const ROOM_C = 20;

/**
 * Hardness of martensitic stainless steel before it softens: as quenched and after tempers up to 150 °C.
 *
 * @param steel - Grade or analysis with 10.5 to 18.5 % Cr.
 * @param hardenC - Hardening temperature [°C], 950 to 1120.
 * @param quenchToC - Coldest temperature before the temper [°C]: a freezer turns part of the retained austenite.
 * @returns HRC.
 * @throws NotAvailable where `dissolvedAt` refuses.
 */
export function stainlessLevel(steel: Steel, hardenC: number, quenchToC = ROOM_C): number {
  const { martensite, carbide, austenite } = stainlessTerms(steel, hardenC, quenchToC);
  const [base, slope, mostByCarbide] = STAINLESS_FIT.level;
  return (
    base + slope * martensite + mostByCarbide * carbideShare(carbide) - HRC_PER_PERCENT_AUSTENITE * austenite
  );
}

/** Share of the most that carbide adds to the hardness: the first tenth of a per cent adds most of it. */
export function carbideShare(carbide: number): number {
  return 1 - Math.exp(-Math.max(0, carbide) / STAINLESS_FIT.carbideScale);
}

/** What the level is made of. */
export interface StainlessTerms {
  /** Hardness of martensite with the carbon in solution [HRC]. */
  readonly martensite: number;
  /** Carbon and nitrogen left in carbide [mass %]. */
  readonly carbide: number;
  /** Retained austenite [%]. */
  readonly austenite: number;
}

/** The parts of the level, which the fit reads too. */
export function stainlessTerms(steel: Steel, hardenC: number, quenchToC: number): StainlessTerms {
  if (!isMartensiticStainless(steel)) {
    throw new NotAvailable(
      `${steel.name} is no martensitic stainless steel: ${numberText(steel.composition.Cr)} % Cr`,
    );
  }
  const whole = carbonOf(steel) + steel.composition.N;
  const { carbon } = dissolvedAt(steel, hardenC);
  return {
    martensite: initialHardness(Math.min(0.6, carbon)),
    carbide: whole - carbon,
    austenite: retainedAt(steel, hardenC, quenchToC),
  };
}
