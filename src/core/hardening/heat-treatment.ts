import table from "../../data/hardening/heat-treatment.json";
import { numberText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import type { Relation } from "../relation";
import { type SourceKey, sourceText } from "../sources";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { lenderNamed } from "../steel/kin";
import type { Steel } from "../steel/steel";
import { grouped, number, orNull, records, sourceKey, text } from "../table";

/** Low and high of a printed range; `null` where the source leaves an end open or prints nothing. */
export interface Span {
  /** Lower end [°C, or HRC of a hardness]; `null` where the source leaves it open. */
  readonly low: number | null;
  /** Upper end [°C, or HRC of a hardness]; `null` where the source leaves it open. */
  readonly high: number | null;
}

/** How a grade is normalised, annealed and hardened, field by field from the first source that prints it. */
export interface HeatTreatment {
  /** Normalising range [°C]. */
  readonly normalise: Span;
  /** Annealing range [°C]. */
  readonly anneal: Span;
  /** Hardening range [°C]. */
  readonly harden: Span;
  /** Soak in words, "" where none is printed. */
  readonly soak: string;
  /** Medium in the source's words, "" where none is printed. */
  readonly quench: string;
  /** Hardness straight from the quench [HRC]. */
  readonly quenched: Span;
  /** Which source gave which figures, and remarks. */
  readonly source: string;
  readonly sources: readonly SourceKey[];
}

const sheets = records(table, {
  grade: text,
  source: sourceKey,
  normaliseLow: orNull(number),
  normaliseHigh: orNull(number),
  annealLow: orNull(number),
  annealHigh: orNull(number),
  hardenLow: orNull(number),
  hardenHigh: orNull(number),
  soakLow: orNull(number),
  soakHigh: orNull(number),
  soakPerMm: orNull(number),
  quench: text,
  quenchedLow: orNull(number),
  quenchedHigh: orNull(number),
  remark: text,
});

type Sheet = (typeof sheets)[number];

/** A figure that a sheet may print: its name in the list of sources, and the columns that hold it. */
const FIELDS = {
  normalise: ["normaliseLow", "normaliseHigh"],
  anneal: ["annealLow", "annealHigh"],
  harden: ["hardenLow", "hardenHigh"],
  soak: ["soakLow", "soakHigh", "soakPerMm"],
  quench: ["quench"],
  "as quenched": ["quenchedLow", "quenchedHigh"],
} as const;

type Field = keyof typeof FIELDS;

const ORDER: readonly string[] = table.order;
const SAME: Readonly<Record<string, string>> = table.same;
const OUTLIERS = records(
  { title: table.title, columns: ["grade", "source", "what"], rows: table.outliers },
  { grade: text, source: sourceKey, what: text },
);

const sheetsByGrade = grouped(sheets, ({ grade }) => grade);

/** The grade of the same steel, else the near kin, whose figures stand in for a grade. */
function equivalentOf(designation: string): string | undefined {
  return SAME[designation] ?? lenderNamed(designation)?.designation;
}

function sheetsOf(designation: string): Sheet[] {
  const own = sheetsByGrade.get(designation) ?? [];
  const borrowed = sheetsByGrade.get(equivalentOf(designation) ?? "") ?? [];
  return [...own, ...borrowed].sort((a, b) => ORDER.indexOf(a.source) - ORDER.indexOf(b.source));
}

function prints(sheet: Sheet, field: Field): boolean {
  return FIELDS[field].some((column) => sheet[column] !== null && sheet[column] !== "");
}

function soakText(sheet: Sheet | undefined): string {
  if (sheet === undefined) return "";
  const { soakLow, soakHigh, soakPerMm } = sheet;
  if (soakPerMm !== null) return `${numberText(soakPerMm)} min for each mm`;
  return soakLow === soakHigh ? `${soakLow} min` : `${soakLow} to ${soakHigh} min`;
}

function span(
  sheet: Sheet | undefined,
  [low, high]: (typeof FIELDS)["normalise" | "anneal" | "harden" | "as quenched"],
): Span {
  return { low: sheet?.[low] ?? null, high: sheet?.[high] ?? null };
}

/** "Lucefin …: harden, quench; ASM …: normalise". */
function sourceLine(chosen: ReadonlyMap<Field, Sheet>): string {
  const bySource = grouped([...chosen], ([, { source }]) => source);
  return [...bySource]
    .map(([source, fields]) => `${sourceText(source)}: ${fields.map(([field]) => field).join(", ")}`)
    .join("; ");
}

function remarks(held: readonly Sheet[]): string {
  const made = held
    .filter(({ remark }) => remark !== "")
    .map(({ remark, source }) => `${remark} (${sourceText(source)})`);
  return made.length === 0 ? "" : `; ${made.join("; ")}`;
}

function merged(designation: string): HeatTreatment | null {
  const held = sheetsOf(designation);
  if (held.length === 0) return null;
  const chosen = new Map<Field, Sheet>();
  for (const field of Object.keys(FIELDS) as Field[]) {
    const sheet = held.find((candidate) => prints(candidate, field));
    if (sheet !== undefined) chosen.set(field, sheet);
  }
  const equivalent = equivalentOf(designation);
  const as = equivalent === undefined ? "" : `figures of ${equivalent} where it has none of its own; `;
  return {
    normalise: span(chosen.get("normalise"), FIELDS.normalise),
    anneal: span(chosen.get("anneal"), FIELDS.anneal),
    harden: span(chosen.get("harden"), FIELDS.harden),
    soak: soakText(chosen.get("soak")),
    quench: chosen.get("quench")?.quench ?? "",
    quenched: span(chosen.get("as quenched"), FIELDS["as quenched"]),
    source: `${as}${sourceLine(chosen)}${remarks(held)}`,
    sources: [...new Set([...chosen.values()].map(({ source }) => source))],
  };
}

const known = new Map<string, HeatTreatment | null>();

/** What is published for a grade; `null` where nothing is, and for an analysis. */
export function publishedTreatment(steel: Steel): HeatTreatment | null {
  const designation = steel.grade?.designation;
  if (designation === undefined) return null;
  const found = known.get(designation);
  if (found !== undefined) return found;
  const treatment = merged(designation);
  known.set(designation, treatment);
  return treatment;
}

/**
 * How a grade is normalised, annealed and hardened.
 *
 * @param steel - A grade of the table.
 * @returns Temperatures [°C], soak in words, hardness as quenched [HRC]; `null` where none is printed.
 * @throws NotAvailable for an analysis and for a grade without published figures.
 * Error: published windows, as their sources print them; sources may disagree. Source: named in `source`.
 */
export function heatTreatment(steel: SteelAsked): HeatTreatment {
  steel = steelAsked(steel);
  const treatment = publishedTreatment(steel);
  if (treatment !== null) return treatment;
  throw new NotAvailable(
    `no heat treatment of ${steel.name} is held: take it from the steelmaker's sheet; ` +
      "CRITICAL gives the temperatures that hardening has to clear",
  );
}

/** Figures that were read but not used, and why, in words; empty where there are none. */
function outlierText(steel: Steel): string {
  return OUTLIERS.filter(({ grade }) => grade === steel.grade?.designation)
    .map(({ source, what }) => `Not used: ${sourceText(source)}, ${what}.`)
    .join(" ");
}

const TREATMENT_ERROR = {
  size: null,
  unit: "°C",
  kind: "sources of one grade differ by 10 to 40 °C",
} as const;

function relationFrom(source: SourceKey, note: string): Relation {
  return {
    title: "Normalising, annealing and hardening of a grade",
    source,
    locator: "figures as printed",
    evidence: "compiled",
    inputs: {},
    output: { label: "temperature", unit: "°C" },
    error: TREATMENT_ERROR,
    ...(note === "" ? {} : { note }),
  };
}

/** The sources behind `heatTreatment`, with the outliers left aside. */
export function heatTreatmentRelations(steel: Steel | null): readonly Relation[] {
  if (steel === null) {
    const all = OUTLIERS.map(({ grade, source, what }) => `${grade}: ${sourceText(source)}, ${what}`).join(
      "; ",
    );
    return [relationFrom("asm-handbook-4", `First source in a fixed order of preference. Not used: ${all}.`)];
  }
  const treatment = publishedTreatment(steel);
  if (treatment === null) return [];
  return treatment.sources.map((source, i) => relationFrom(source, i === 0 ? outlierText(steel) : ""));
}
