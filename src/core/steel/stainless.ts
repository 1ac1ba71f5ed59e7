import { dissolvedAt, dissolvedRelations } from "../hardening/dissolved";
import { publishedHardening } from "../hardening/hardening-temperature";
import { numberText, temperatureText } from "../quantity-text";
import { attemptOr, NotAvailable } from "../refusal";
import { type Relation, relation } from "../relation";
import { type SteelAsked, steelAsked } from "./asked";
import type { Steel } from "./steel";

/** What is left in solution to keep a hardened steel bright. */
export interface Stainless {
  /** Chromium of the whole steel [mass %]. */
  readonly bulk: number;
  /** Chromium in solution after hardening [mass %]; null where not needed or no relation is published. */
  readonly dissolved: number | null;
  /** Pitting resistance equivalent of what is in solution [-]; null as above. */
  readonly pren: number | null;
  /** Whether it stays bright, one sentence. */
  readonly verdict: string;
}

/** Least dissolved chromium of a stainless steel. */
export const PASSIVITY = relation({
  title: "chromium that keeps a steel passive",
  source: "std-en-10088-1",
  locator: "definition of stainless steel: at least 10.5 % Cr; 10.5 to 11 % is a narrow margin",
  evidence: "standard",
  inputs: {},
  output: { label: "dissolved chromium", unit: "mass %" },
  error: {
    size: 0.4,
    unit: "mass %",
    kind: "largest difference between the regression and the full calculation",
  },
  note: "The definition counts chromium of the whole steel; here the chromium left in solution is held against it.",
});

/** Pitting resistance equivalent number. */
const PREN = relation({
  title: "pitting resistance equivalent: Cr + 3.3 (Mo + 0.5 W) + 16 N",
  source: "imoa-pren",
  locator: "steel grades",
  evidence: "compiled",
  inputs: {},
  output: { label: "PREN of the dissolved", unit: "" },
  error: { size: 0.35, unit: "", kind: "against two full calculations (440C, X50CrMoV15 at 1040 °C)" },
  note: "Not usually quoted for martensitic steels. Mo and W are taken as dissolved in the same share as Cr, N wholly.",
});

const LEAST = 10.5;
const SAFE = 11;
const ANNEALED = ["austenitic stainless", "ferritic stainless"];
/** Carbon up to which these hold no chromium carbide after annealing, mass %: the usual maximum of their standards. */
const LOW_CARBON = 0.15;

/** True where annealing leaves no chromium carbide. A grade with a carbon maximum alone is one of these. */
function isWhollyDissolved({ family, composition }: Steel): boolean {
  return ANNEALED.includes(family) && !(composition.C > LOW_CARBON);
}

function prenOf({ composition }: Steel, dissolved: number): number {
  const { Cr, Mo, W, N } = composition;
  const share = dissolved / Cr;
  return dissolved + 3.3 * share * (Mo + 0.5 * W) + 16 * N;
}

function temperatureFor(steel: Steel, hardenC: number | undefined): number {
  if (hardenC !== undefined) return hardenC;
  const published = publishedHardening(steel);
  if (published !== null) return published.celsius;
  throw new NotAvailable(
    `no hardening window is held for ${steel.name}: give the hardening temperature in °C`,
  );
}

function amount(percent: number): string {
  return `${numberText(Number(percent.toFixed(1)))} % Cr`;
}

function verdictOf(steel: Steel, dissolved: number): string {
  const left = `${amount(dissolved)} in solution`;
  if (dissolved < LEAST) return `not stainless: ${left}, ${LEAST} % needed`;
  if (isWhollyDissolved(steel)) return `stainless: ${left}; does not harden by quenching`;
  const temper = `a temper at ${temperatureText(425)} to ${temperatureText(600)} takes more out`;
  return dissolved < SAFE ? `barely stainless: ${left}; ${temper}` : `stainless: ${left}; ${temper}`;
}

/** Too little chromium in all: what is dissolved adds nothing to the verdict and may have no relation. */
function lowChromium(steel: Steel, hardenC: number | undefined): Stainless {
  const bulk = steel.composition.Cr;
  const verdict = `not stainless: ${amount(bulk)} in all, ${LEAST} % needed`;
  const temperature = hardenC ?? publishedHardening(steel)?.celsius;
  const dissolved = temperature === undefined ? null : dissolvedOrNull(steel, temperature);
  return {
    bulk,
    dissolved,
    pren: dissolved === null || bulk === 0 ? null : prenOf(steel, dissolved),
    verdict,
  };
}

function dissolvedOrNull(steel: Steel, hardenC: number): number | null {
  return attemptOr(null, () => dissolvedAt(steel, hardenC).chromium);
}

/**
 * Whether a hardened steel keeps enough chromium in solution to be stainless.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param hardenC - Hardening temperature [°C]; the middle of the grade's window where left out.
 * @returns Chromium in all and in solution [mass %], pitting resistance equivalent of the dissolved, verdict.
 * @throws NotAvailable where no relation is published at that temperature or no window is held.
 * Error and source: {@link PASSIVITY}, {@link PREN}, {@link DISSOLVED_HIGH_CHROMIUM}.
 */
export function stainless(steel: SteelAsked, hardenC?: number): Stainless {
  steel = steelAsked(steel);
  const bulk = steel.composition.Cr;
  if (bulk < LEAST) return lowChromium(steel, hardenC);
  const isWhole = isWhollyDissolved(steel);
  const dissolved = isWhole ? bulk : dissolvedAt(steel, temperatureFor(steel, hardenC)).chromium;
  return { bulk, dissolved, pren: prenOf(steel, dissolved), verdict: verdictOf(steel, dissolved) };
}

/** The relations behind `stainless`. */
export function stainlessRelations(steel: Steel | null): readonly Relation[] {
  const own = [PASSIVITY, PREN];
  if (steel === null || isWhollyDissolved(steel) || steel.composition.Cr < LEAST) return own;
  return [...own, ...dissolvedRelations(steel)];
}
