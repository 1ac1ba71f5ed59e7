import { readdirSync, readFileSync } from "node:fs";

/** What answers, and what only fits and checks read; the second is told apart by its prefix. */
const FOLDERS = { "": "src/data", "fitting/": "tests/fitting/data" } as const;
const PATH = "tests/accuracy/frozen/data-files.json";

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** Numbers added up and texts counted, however deep they lie. */
interface Tally {
  sum: number;
  texts: number;
}

function add(tally: Tally, value: Json): void {
  if (typeof value === "number") tally.sum += value;
  else if (typeof value === "string" && value !== "") tally.texts += 1;
  else if (typeof value === "object" && value !== null)
    for (const part of Object.values(value)) add(tally, part);
}

/** Six decimals: a sum of decimals is the same whatever the order of the rows. */
function shown({ sum, texts }: Tally): string {
  const number = String(Number(sum.toFixed(6)));
  if (texts === 0) return number;
  return sum === 0 ? `${texts} texts` : `${number} and ${texts} texts`;
}

function columnTallies(rows: readonly Json[]): Tally[] {
  const tallies: Tally[] = [];
  for (const row of rows) {
    const cells = Array.isArray(row) ? (row as readonly Json[]) : [row];
    cells.forEach((cell, column) => {
      let tally = tallies[column];
      if (tally === undefined) {
        tally = { sum: 0, texts: 0 };
        tallies[column] = tally;
      }
      add(tally, cell);
    });
  }
  return tallies;
}

/** A data file in one line: its rows and the sum of every column, texts counted. */
function digest(content: { readonly rows?: Json } & Record<string, Json>): string {
  const { rows } = content;
  const list = Array.isArray(rows) ? (rows as readonly Json[]) : Object.values(content);
  return `${list.length} rows: ${columnTallies(list).map(shown).join(", ")}`;
}

function filesOf(prefix: string, folder: string): [path: string, line: string][] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".json"))
    .sort()
    .map((path) => [`${prefix}${path}`, digest(JSON.parse(readFileSync(`${folder}/${path}`, "utf8")))]);
}

/** Every data file with its line, in the order of the paths. */
export function dataFiles(): Record<string, string> {
  return Object.fromEntries(Object.entries(FOLDERS).flatMap(([prefix, folder]) => filesOf(prefix, folder)));
}

export function frozenDataFiles(): Record<string, string> {
  return JSON.parse(readFileSync(PATH, "utf8")) as Record<string, string>;
}
