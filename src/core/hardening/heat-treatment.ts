import table from "../../data/hardening/heat-treatment.json";
import { numberText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import type { Relation } from "../relation";
import { type SourceKey, sourceText } from "../sources";
import type { Steel } from "../steel/steel";

/** Low and high of a printed range; `null` where the source leaves an end open or prints nothing. */
export interface Span {
  readonly low: number | null;
  readonly high: number | null;
}

/** How a grade is normalised, annealed and hardened, field by field from the first source that prints it. */
export interface HeatTreatment {
  readonly normalise: Span;
  readonly anneal: Span;
  readonly harden: Span;
  /** Soak in words, "" where none is printed. */
  readonly soak: string;
  readonly quench: string;
  /** HRC as quenched. */
  readonly quenched: Span;
  /** Which source gave which figures, and remarks. */
  readonly source: string;
  readonly sources: readonly SourceKey[];
}

type Cell = number | null;
type Row = readonly [
  grade: string,
  source: string,
  normaliseLow: Cell,
  normaliseHigh: Cell,
  annealLow: Cell,
  annealHigh: Cell,
  hardenLow: Cell,
  hardenHigh: Cell,
  soakLow: Cell,
  soakHigh: Cell,
  soakPerMm: Cell,
  quench: string,
  quenchedLow: Cell,
  quenchedHigh: Cell,
  remark: string,
];

/** A figure of a row: its name, and where it stands. */
const FIELDS = {
  normalise: [2, 3],
  anneal: [4, 5],
  harden: [6, 7],
  soak: [8, 9, 10],
  quench: [11],
  "as quenched": [12, 13],
} as const;

type Field = keyof typeof FIELDS;

const ORDER: readonly string[] = table.order;
const SAME: Readonly<Record<string, string>> = table.same;
const OUTLIERS = table.outliers as unknown as readonly (readonly [
  grade: string,
  source: string,
  what: string,
])[];

const rowsByGrade = new Map<string, Row[]>();
for (const row of table.rows as unknown as Row[]) {
  rowsByGrade.set(row[0], [...(rowsByGrade.get(row[0]) ?? []), row]);
}

function rowsOf(designation: string): Row[] {
  const equivalent = SAME[designation];
  const rows = [...(rowsByGrade.get(designation) ?? []), ...(rowsByGrade.get(equivalent ?? "") ?? [])];
  return rows.sort((a, b) => ORDER.indexOf(a[1]) - ORDER.indexOf(b[1]));
}

function prints(row: Row, field: Field): boolean {
  return FIELDS[field].some((column) => row[column] !== null && row[column] !== "");
}

function soakText(row: Row | undefined): string {
  if (row === undefined) return "";
  const [low, high, perMm] = [row[8], row[9], row[10]];
  if (perMm !== null) return `${numberText(perMm)} min for each mm`;
  return low === high ? `${low} min` : `${low} to ${high} min`;
}

function span(row: Row | undefined, low: number, high: number): Span {
  return { low: (row?.[low] ?? null) as Cell, high: (row?.[high] ?? null) as Cell };
}

function shortName(key: string): string {
  return sourceText(key as SourceKey);
}

/** "Lucefin …: harden, quench; ASM …: normalise". */
function sourceLine(chosen: ReadonlyMap<Field, Row>): string {
  const fields = new Map<string, Field[]>();
  for (const [field, row] of chosen) fields.set(row[1], [...(fields.get(row[1]) ?? []), field]);
  return [...fields].map(([key, names]) => `${shortName(key)}: ${names.join(", ")}`).join("; ");
}

function remarks(rows: readonly Row[]): string {
  const made = rows.filter((row) => row[14] !== "").map((row) => `${row[14]} (${shortName(row[1])})`);
  return made.length === 0 ? "" : `; ${made.join("; ")}`;
}

function merged(designation: string): HeatTreatment | null {
  const rows = rowsOf(designation);
  if (rows.length === 0) return null;
  const chosen = new Map<Field, Row>();
  for (const field of Object.keys(FIELDS) as Field[]) {
    const row = rows.find((candidate) => prints(candidate, field));
    if (row !== undefined) chosen.set(field, row);
  }
  const equivalent = SAME[designation];
  const as = equivalent === undefined ? "" : `figures of ${equivalent} where it has none of its own; `;
  return {
    normalise: span(chosen.get("normalise"), 2, 3),
    anneal: span(chosen.get("anneal"), 4, 5),
    harden: span(chosen.get("harden"), 6, 7),
    soak: soakText(chosen.get("soak")),
    quench: chosen.get("quench")?.[11] ?? "",
    quenched: span(chosen.get("as quenched"), 12, 13),
    source: `${as}${sourceLine(chosen)}${remarks(rows)}`,
    sources: [...new Set([...chosen.values()].map((row) => row[1] as SourceKey))],
  };
}

const held = new Map<string, HeatTreatment | null>();

/** What is published for a grade; `null` where nothing is, and for an analysis. */
export function publishedTreatment(steel: Steel): HeatTreatment | null {
  const designation = steel.grade?.designation;
  if (designation === undefined) return null;
  const known = held.get(designation);
  if (known !== undefined) return known;
  const treatment = merged(designation);
  held.set(designation, treatment);
  return treatment;
}

/**
 * How a grade is normalised, annealed and hardened.
 *
 * @throws NotAvailable for an analysis and for a grade without published figures.
 */
export function heatTreatment(steel: Steel): HeatTreatment {
  const treatment = publishedTreatment(steel);
  if (treatment !== null) return treatment;
  throw new NotAvailable(
    `no heat treatment of ${steel.name} is held: take it from the steelmaker's sheet; ` +
      "CRITICAL gives the temperatures that hardening has to clear",
  );
}

/** Figures that were read but not used, and why, in words; empty where there are none. */
export function outlierText(steel: Steel): string {
  return OUTLIERS.filter(([grade]) => grade === steel.grade?.designation)
    .map(([, source, what]) => `Not used: ${shortName(source)}, ${what}.`)
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
    const all = OUTLIERS.map(([grade, source, what]) => `${grade}: ${shortName(source)}, ${what}`).join("; ");
    return [relationFrom("asm-handbook-4", `First source in a fixed order of preference. Not used: ${all}.`)];
  }
  const treatment = publishedTreatment(steel);
  if (treatment === null) return [];
  return treatment.sources.map((source, i) => relationFrom(source, i === 0 ? outlierText(steel) : ""));
}
