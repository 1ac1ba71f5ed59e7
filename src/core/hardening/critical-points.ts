import table from "../../data/hardening/critical-temperatures.json";
import { attemptOr, NotAvailable } from "../refusal";
import { checkRange, type Relation, relation } from "../relation";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { carbonOf } from "../steel/carbon";
import { checkElements, elements } from "../steel/element-ranges";
import type { Steel } from "../steel/steel";
import { number, orNull, records, sourceKey, text } from "../table";
import { LOWER_CRITICAL, lowerCritical, UPPER_CRITICAL, upperCritical } from "./critical";
import { acm, dissolvedAt } from "./dissolved";
import { publishedHardening, usualHardening } from "./hardening-temperature";
import { HIGH_CHROMIUM_START, MARTENSITE_START, startOf } from "./martensite";

/** Temperatures at which a steel changes; `null` where none is published and no equation holds. */
export interface CriticalPoints {
  /** Where austenite begins to form on heating [°C]. */
  readonly ac1: number | null;
  /** Where the last ferrite or cementite is gone on heating [°C]. */
  readonly upper: number | null;
  /** What the upper one is: the end of ferrite or of cementite; "" where none is given. */
  readonly upperName: "Ac3" | "Acm" | "as printed" | "";
  /** Where martensite begins, of the austenite at the hardening temperature [°C]. */
  readonly ms: number | null;
}

/** Up to here the equations were made for; above it only a steelmaker's card can answer. */
const MAX_CHROMIUM = LOWER_CRITICAL.inputs.Cr.max;
const STAINLESS_CHROMIUM = 9;

/** End of cementite on heating. */
const CARBIDE_CRITICAL = relation({
  title: "Upper critical temperature Acm",
  source: "carbide-equilibrium",
  locator: "iron-carbon solubility, shifted by the elements of the regression for cementite steels",
  evidence: "fitted",
  inputs: {
    ...elements({ C: [0.6, 1.5] }),
    Cr: LOWER_CRITICAL.inputs.Cr,
  },
  output: { label: "Acm", unit: "°C" },
  error: { size: 20, unit: "°C", kind: "about, against the full calculation of 1095, 52100 and L6" },
});

const cards = records(table, {
  grade: text,
  ac1: number,
  upper: orNull(number),
  ms: orNull(number),
  source: sourceKey,
});

type Card = (typeof cards)[number];

const published = new Map(cards.map((card) => [card.grade, card]));

interface Upper {
  readonly celsius: number;
  readonly name: "Ac3" | "Acm";
}

function upperOf(steel: Steel, carbon: number, ac1: number): Upper {
  const carbideEnd = acm(steel.composition, carbon);
  if (carbideEnd <= ac1) return { celsius: upperCritical(steel.composition, carbon), name: "Ac3" };
  checkRange(CARBIDE_CRITICAL, "C", carbon);
  return { celsius: carbideEnd, name: "Acm" };
}

/** Ms of what is dissolved; without a hardening temperature only where a usual one is known. */
function startFor(steel: Steel, hardenC: number | undefined): number | null {
  if (hardenC !== undefined) return startOf(steel.composition, dissolvedAt(steel, hardenC));
  const { Cr } = steel.composition;
  if (Cr > STAINLESS_CHROMIUM && publishedHardening(steel) === null) return null;
  return attemptOr(null, () => startOf(steel.composition, dissolvedAt(steel, usualHardening(steel).celsius)));
}

function fromCard({ ac1, upper, ms }: Card, steel: Steel, hardenC: number | undefined): CriticalPoints {
  const ownStart = hardenC === undefined ? ms : null;
  return {
    ac1,
    upper,
    upperName: upper === null ? "" : "as printed",
    ms: ownStart ?? startFor(steel, hardenC),
  };
}

/**
 * Critical temperatures of a steel and where its martensite starts.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param hardenC - Hardening temperature [°C]; left out, the middle of the published window.
 * @returns [°C]; `null` where nothing is published and no equation holds. The upper one is never below Ac1.
 * @throws NotAvailable where nothing at all is held for the steel, and where `dissolvedAt` refuses a
 *   hardening temperature that was given.
 * Error and source: {@link LOWER_CRITICAL}, {@link UPPER_CRITICAL}, {@link MARTENSITE_START}, {@link HIGH_CHROMIUM_START}.
 */
export function criticalPoints(steel: SteelAsked, hardenC?: number): CriticalPoints {
  steel = steelAsked(steel);
  const card = published.get(steel.grade?.designation ?? "");
  if (card !== undefined) return fromCard(card, steel, hardenC);
  const c = steel.composition;
  if (c.Cr <= MAX_CHROMIUM) {
    const carbon = carbonOf(steel);
    checkElements(LOWER_CRITICAL, c);
    const ac1 = lowerCritical(c);
    const { celsius, name } = upperOf(steel, carbon, ac1);
    return { ac1, upper: celsius, upperName: name, ms: startFor(steel, hardenC) };
  }
  const ms = startFor(steel, hardenC);
  if (ms === null) {
    throw new NotAvailable(
      `no critical temperature of ${steel.name} is held: the equations end at ${MAX_CHROMIUM} % Cr; take it from the steelmaker's card`,
    );
  }
  return { ac1: null, upper: null, upperName: "", ms };
}

function cardRelation({ grade, source }: Card): Relation {
  return {
    title: `Critical temperatures of ${grade}`,
    source,
    locator: "transformation temperatures",
    evidence: "measured",
    inputs: {},
    output: { label: "temperature", unit: "°C" },
    error: { size: null, unit: "°C", kind: "one card; two cards of H13 differ by 3 to 20 °C" },
  };
}

const EQUATIONS = [LOWER_CRITICAL, UPPER_CRITICAL, CARBIDE_CRITICAL, MARTENSITE_START, HIGH_CHROMIUM_START];

/** The relations behind `criticalPoints` for a steel. */
export function criticalRelations(steel: Steel | null): readonly Relation[] {
  if (steel === null) return EQUATIONS;
  const card = published.get(steel.grade?.designation ?? "");
  if (card !== undefined) return [cardRelation(card)];
  const { Cr, C } = steel.composition;
  if (Cr > STAINLESS_CHROMIUM) return [HIGH_CHROMIUM_START];
  if (Cr > MAX_CHROMIUM) return [];
  const isCarbide = acm(steel.composition, C) > lowerCritical(steel.composition);
  return [LOWER_CRITICAL, isCarbide ? CARBIDE_CRITICAL : UPPER_CRITICAL, MARTENSITE_START];
}
