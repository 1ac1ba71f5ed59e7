import { readdirSync, readFileSync } from "node:fs";

/** From the root of the project, where every script runs. */
const FOLDER = "tests/fitting/data";

type Cell = number | null;

/** One printed row of a tempering source. */
export interface TemperRow {
  readonly source: string;
  readonly grade: string;
  readonly hardenLow: Cell;
  readonly hardenHigh: Cell;
  readonly temperLow: Cell;
  readonly temperHigh: Cell;
  readonly hours: Cell;
  readonly cycles: Cell;
  readonly hrcLow: Cell;
  readonly hrcHigh: Cell;
  readonly kind: string;
}

type PrintedRow = [string, Cell, Cell, Cell, Cell, Cell, Cell, Cell, Cell, string];

interface SourceFile {
  readonly source: string;
  readonly quality: string;
  readonly seen: string;
  readonly analyses?: Readonly<Record<string, readonly number[]>>;
  readonly rows: readonly PrintedRow[];
}

function toRow(source: string, printed: PrintedRow): TemperRow {
  const [grade, hardenLow, hardenHigh, temperLow, temperHigh, hours, cycles, hrcLow, hrcHigh, kind] = printed;
  return {
    source,
    grade,
    hardenLow,
    hardenHigh,
    temperLow,
    temperHigh,
    hours,
    cycles,
    hrcLow,
    hrcHigh,
    kind,
  };
}

/** A source with its rows in the order printed. */
export interface TemperSource {
  readonly source: string;
  readonly quality: string;
  readonly seen: string;
  /** C, Mn, Si, Cr, Ni, Mo, V in mass % by grade, where the source measured them. */
  readonly analyses: Readonly<Record<string, readonly number[]>>;
  readonly rows: readonly TemperRow[];
}

function read(name: string): TemperSource {
  const {
    source,
    quality,
    seen,
    analyses = {},
    rows,
  } = JSON.parse(readFileSync(`${FOLDER}/${name}`, "utf8")) as SourceFile;
  return { source, quality, seen, analyses, rows: rows.map((row) => toRow(source, row)) };
}

/** Files that hold no hardness after temper. */
const NO_ROWS: ReadonlySet<string> = new Set(["curve-grades.json"]);

/** Every tempering source by its key, files in alphabetical order. */
export const TEMPER_SOURCES: ReadonlyMap<string, TemperSource> = new Map(
  readdirSync(FOLDER)
    .filter((name) => !NO_ROWS.has(name))
    .sort()
    .map((name) => [name.replace(/\.json$/, ""), read(name)]),
);

/** The source of a key. */
export function temperSource(key: string): TemperSource {
  const found = TEMPER_SOURCES.get(key);
  if (found === undefined) throw new Error(`no tempering source ${key}`);
  return found;
}

/** The middle of a printed band of hardness, or the single figure. */
export function middleHrc(row: TemperRow): number {
  if (row.hrcLow === null) throw new Error(`${row.source} ${row.grade}: no lower hardness`);
  return (row.hrcLow + (row.hrcHigh ?? row.hrcLow)) / 2;
}

/** Sources that never make a curve, whatever their rows look like; the reason stands in each file. */
export const NEVER_FITTED: ReadonlySet<string> = new Set([
  "penha-2010",
  "relayed-5160-list",
  "luokaiwei-1095",
]);

const SHORTEST_H = 0.25;
const MIN_HRC = 20;
const MIN_C = 100;

/** Whether a row may take part in a fit: measured after a real hold, in the range of the C scale. */
export function sound(row: TemperRow): boolean {
  if (row.kind !== "point" || NEVER_FITTED.has(row.source) || row.temperLow === null) return false;
  if (row.hours !== null && row.hours < SHORTEST_H) return false;
  return row.temperLow >= MIN_C && middleHrc(row) >= MIN_HRC;
}
