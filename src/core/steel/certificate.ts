import { InvalidValue, NotAvailable } from "../refusal";
import { type SteelAsked, steelAsked } from "./asked";
import { boundsOf } from "./bounds";
import { type Bounds, ELEMENTS, type Element } from "./composition";
import { limitsCaution } from "./composition-text";
import { classesOf } from "./grades";
import { checkContent, checkTotal } from "./plausible";
import { type Variation, variationOf } from "./product-variation";
import { roundToPlaces } from "./rounding";
import type { Grade, Steel } from "./steel";

/** What was analysed: the ladle sample of a heat, or pieces of the bar. */
export const ANALYSIS_KINDS = ["heat", "product"] as const;

export type AnalysisKind = (typeof ANALYSIS_KINDS)[number];

export type Status = "OK" | "HIGH" | "LOW" | "MISSING" | "NO LIMIT";

/** One figure of a certificate. */
export interface Result {
  readonly element: Element;
  /** As stated, 0 to 100 [mass %]. */
  readonly value: number;
}

/** One line of the comparison. */
export interface CertificateLine {
  readonly element: Element;
  /** Lower limit compared with: that of the heat, or widened for a piece [mass %]; `null` where none is set. */
  readonly low: number | null;
  /** Upper limit compared with, likewise [mass %]; `null` where none is set. */
  readonly high: number | null;
  /** As the certificate states it [mass %]; `null` where it does not. */
  readonly value: number | null;
  readonly status: Status;
}

/** A certificate held against its grade. */
export interface CertificateReport {
  readonly lines: readonly CertificateLine[];
  /** Begins with "pass", "fail" or "incomplete". */
  readonly verdict: string;
}

interface Allowed {
  readonly element: Element;
  readonly heat: Bounds;
  readonly bounds: Bounds;
  readonly places: number;
  /** Null where the limits of the heat hold for the piece too. */
  readonly variation: Variation | null;
}

/** Standards print phosphorus and sulphur to three decimals and everything else to two, unless a limit is finer. */
function placesOf(element: Element, { low, high }: Bounds): number {
  const usual = element === "P" || element === "S" ? 3 : 2;
  const printed = [low, high].map((limit) =>
    limit === null ? 0 : (String(limit).split(".")[1]?.length ?? 0),
  );
  return Math.max(usual, ...printed);
}

function widened({ low, high }: Bounds, { under, over }: Variation, places: number): Bounds {
  return {
    low: low === null ? null : roundToPlaces(low - under, places),
    high: high === null ? null : roundToPlaces(high + over, places),
  };
}

function allowed(steel: Steel, grade: Grade, element: Element, kind: AnalysisKind): Allowed {
  const heat = boundsOf(steel, element);
  const isLimited = heat.low !== null || heat.high !== null;
  const variation = kind === "product" && isLimited ? variationOf(grade, element, heat) : null;
  const size = variation === null ? 0 : Math.max(variation.under, variation.over);
  const places = Math.max(placesOf(element, heat), String(size).split(".")[1]?.length ?? 0);
  return {
    element,
    heat,
    bounds: variation === null ? heat : widened(heat, variation, places),
    places,
    variation,
  };
}

function compare(value: number, { low, high }: Bounds, places: number): Status {
  if (low === null && high === null) return "NO LIMIT";
  const rounded = roundToPlaces(value, places);
  if (high !== null && rounded > high) return "HIGH";
  return low !== null && rounded < low ? "LOW" : "OK";
}

function checkResults(results: readonly Result[], kind: AnalysisKind): void {
  const contents = new Map<Element, number>();
  for (const { element, value } of results) {
    checkContent(element, value);
    if (kind === "heat" && contents.has(element))
      throw new InvalidValue(
        `${element} is given twice: a heat has one analysis; several pieces of it are "product"`,
      );
    contents.set(element, Math.max(value, contents.get(element) ?? 0));
  }
  checkTotal(contents);
}

/** Elements of which some pieces lie above the range of the heat and some below it. */
function splitElements(lines: readonly CertificateLine[], limits: ReadonlyMap<Element, Allowed>): Element[] {
  const sides = new Map<Element, Set<Status>>();
  for (const { element, value } of lines) {
    const limit = limits.get(element);
    if (value === null || limit === undefined) continue;
    const seen = sides.get(element) ?? new Set();
    sides.set(element, seen.add(compare(value, limit.heat, limit.places)));
  }
  return [...sides].filter(([, seen]) => seen.has("HIGH") && seen.has("LOW")).map(([element]) => element);
}

function listed(lines: readonly CertificateLine[], status: Status): string[] {
  return [...new Set(lines.filter((line) => line.status === status).map(({ element }) => element))];
}

function mainVerdict(lines: readonly CertificateLine[], split: readonly Element[]): string {
  const faults = [
    ...listed(lines, "HIGH").map((element) => `${element} high`),
    ...listed(lines, "LOW").map((element) => `${element} low`),
    ...split.map((element) => `${element} both above and below the range in one heat`),
  ];
  if (faults.length > 0) return `fail: ${faults.join(", ")}`;
  const missing = listed(lines, "MISSING");
  return missing.length > 0 ? `incomplete: ${missing.join(", ")} not given` : "pass";
}

/** What a reader of the verdict must know about the figures it rests on. */
function reservations(steel: Steel, limits: readonly Allowed[], kind: AnalysisKind): string[] {
  const notes = [limitsCaution(steel)];
  if (kind === "product") {
    const recalled = limits.filter(({ variation }) => variation?.isRecalled);
    const held = limits.filter(
      ({ heat, variation }) => variation === null && (heat.high ?? heat.low) !== null,
    );
    const names = (list: readonly Allowed[]) => list.map(({ element }) => element).join(", ");
    if (recalled.length > 0) notes.push(`variation of ${names(recalled)} recalled, not confirmed`);
    if (held.length > 0) notes.push(`no variation held for ${names(held)}: limits of the heat used`);
  }
  return notes.filter((note) => note !== "");
}

function gradeOf({ grade, name }: Steel): Grade {
  if (grade === null)
    throw new InvalidValue(`"${name}" is an analysis and has no limits: give the grade that was ordered`);
  const classes = classesOf(grade).filter(({ designation }) => designation.endsWith(")"));
  if (classes.length === 0) return grade;
  const which = classes.map(({ designation }) => `"${designation}"`).join(" or ");
  throw new NotAvailable(`${grade.designation} has a range of carbon for each class: give ${which}`);
}

/**
 * Holds a mill certificate against the limits of the grade ordered.
 *
 * @param steel - The grade.
 * @param results - Figures in the order of the certificate [mass %]; for pieces an element may come several times.
 * @param kind - Heat analysis, held to the limits, or product analysis, held to the limits and the permissible variation.
 * @returns Lines in the order given, then the elements that the grade limits and the certificate leaves out.
 *   Figures are rounded to the last place of the limit before they are compared (ASTM E29).
 * @throws InvalidValue for an analysis as grade, an element given twice in a heat, slips of units, a total over 100 %;
 *   NotAvailable where no permissible variation is held for the standard.
 * Error: none, a comparison. Source: the standard of the grade; permissible variations as EVIDENCE names them.
 */
export function certificate(
  steel: SteelAsked,
  results: readonly Result[],
  kind: AnalysisKind,
): CertificateReport {
  steel = steelAsked(steel);
  const grade = gradeOf(steel);
  checkResults(results, kind);
  const limits = new Map(ELEMENTS.map((element) => [element, allowed(steel, grade, element, kind)]));
  const limitFor = (element: Element) => limits.get(element) ?? allowed(steel, grade, element, kind);
  const given = results.map(({ element, value }): CertificateLine => {
    const { bounds, places } = limitFor(element);
    return { element, ...bounds, value, status: compare(value, bounds, places) };
  });
  const missing = ELEMENTS.filter(
    (element) => grade.limits[element] !== undefined && !results.some((result) => result.element === element),
  ).map(
    (element): CertificateLine => ({ element, ...limitFor(element).bounds, value: null, status: "MISSING" }),
  );
  const lines = [...given, ...missing];
  const compared = [...new Set(results.map(({ element }) => element))].map(limitFor);
  const main = mainVerdict(lines, kind === "product" ? splitElements(lines, limits) : []);
  return { lines, verdict: [main, ...reservations(steel, compared, kind)].join("; ") };
}
