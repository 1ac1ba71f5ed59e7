import type { CellValue } from "../../engine/cell-value";
import { readCellName } from "../../formula/addresses";
import { type RowKey, readRowKey } from "./copy-number";
import { ANSWER_FORMS, ANSWERED_BY, ANSWERED_ON, type AnswerForm, ASKED_OF, elementOf, KEY } from "./forms";

/** A content, or nothing. */
export type Held = CellValue | undefined;

/** Cells row by row; rows and cells may be missing. */
export type CellGrid = readonly (readonly Held[] | undefined)[];

/** A row of an answer with its key. */
export interface AnswerRow {
  readonly key: RowKey;
  /** Row of the grid. */
  readonly row: number;
  readonly cells: ReadonlyMap<string, Held>;
}

/** A table of answers, found by its headings and keys wherever it stands. */
export interface AnswerTable {
  readonly form: AnswerForm;
  readonly headingRow: number;
  /** Column of each heading, by the heading as written. */
  readonly columns: ReadonlyMap<string, number>;
  readonly rows: readonly AnswerRow[];
  /** What stands above the headings, the two cells of the head left out. */
  readonly above: readonly CellValue[];
  readonly by: string;
  readonly on: Held;
  /** Whom it was made for; empty where it was made for all of a kind, or its head is lost. */
  readonly of: string;
}

/** Cells by address as rows. */
export function gridOf(cells: ReadonlyMap<string, CellValue>): CellGrid {
  const grid: Held[][] = [];
  for (const [name, content] of cells) {
    const place = readCellName(name);
    if (place === undefined) continue;
    grid[place.row] ??= [];
    const row = grid[place.row];
    if (row !== undefined) row[place.column] = content;
  }
  return grid;
}

/** A text of a cell without blanks around and doubled ones within. */
export const textIn = (held: Held): string =>
  held === undefined || "error" in held ? "" : String(held.value).replace(/\s+/g, " ").trim();

/** A heading as tables are searched for it. */
const plain = (heading: string) => heading.toLowerCase().replace(/\s+/g, " ").trim();

const KNOWN = new Map(
  [KEY, ...ANSWER_FORMS.flatMap(({ told, asked }) => [...told, ...asked].map(({ heading }) => heading))].map(
    (heading) => [plain(heading), heading],
  ),
);

/** A heading as the forms spell it. */
const spelt = (written: string): string => KNOWN.get(plain(written)) ?? written;

function headingsIn(row: readonly Held[] | undefined): Map<string, number> | undefined {
  const columns = new Map<string, number>();
  row?.forEach((held, column) => {
    const heading = spelt(textIn(held));
    if (heading !== "" && !columns.has(heading)) columns.set(heading, column);
  });
  const isKnown = (heading: string) => KNOWN.has(plain(heading)) || elementOf(heading) !== undefined;
  const hasKnown = [...columns.keys()].some((heading) => heading !== KEY && isKnown(heading));
  return columns.has(KEY) && hasKnown ? columns : undefined;
}

function rowsBelow(
  grid: CellGrid,
  first: number,
  end: number,
  columns: ReadonlyMap<string, number>,
): AnswerRow[] {
  const keyColumn = columns.get(KEY) ?? 0;
  return Array.from({ length: end - first }, (_, at) => first + at).flatMap((row) => {
    const key = readRowKey(textIn(grid[row]?.[keyColumn]));
    if (key === undefined) return [];
    const cells = new Map([...columns].map(([heading, column]) => [heading, grid[row]?.[column]] as const));
    return [{ key, row, cells }];
  });
}

interface Head {
  readonly above: CellValue[];
  readonly by: string;
  readonly on: Held;
  readonly of: string;
}

/** What stands above a table. */
function headOf(grid: CellGrid, first: number, end: number): Head {
  const cells = grid
    .slice(first, end)
    .flatMap((row) => (row ?? []).map((held, column) => ({ held, label: plain(textIn(row?.[column - 1])) })));
  const beside = (label: string) => cells.filter((cell) => cell.label === plain(label)).at(-1)?.held;
  const answers = [ANSWERED_BY, ANSWERED_ON].map(plain);
  return {
    above: cells.flatMap(({ held, label }) => (held === undefined || answers.includes(label) ? [] : [held])),
    by: textIn(beside(ANSWERED_BY)),
    on: beside(ANSWERED_ON),
    of: textIn(beside(ASKED_OF)),
  };
}

/** All tables of answers among the cells of a sheet, a text file or a pasted text. */
export function answerTables(grid: CellGrid): AnswerTable[] {
  const found = Array.from(grid, (row, at) => ({ at, columns: headingsIn(row) })).flatMap(
    ({ at, columns }) => (columns === undefined ? [] : [{ at, columns }]),
  );
  return found.flatMap(({ at, columns }, index): AnswerTable[] => {
    const rows = rowsBelow(grid, at + 1, found[index + 1]?.at ?? grid.length, columns);
    const form = ANSWER_FORMS.find(({ mark }) => mark === rows[0]?.key.mark);
    if (form === undefined) return [];
    const { above, by, on, of } = headOf(grid, (found[index - 1]?.at ?? -1) + 1, at);
    return [{ form, headingRow: at, columns, rows, above, by, on, of }];
  });
}

/** What tables tell, as key, heading and content: the part of them that is not the other side's to fill in. */
export function toldCells(tables: readonly AnswerTable[]): (readonly [key: string, heading: string, Held])[] {
  return tables.flatMap(({ form, rows, above }) => [
    ...above.map((content, at) => [`${form.mark} above`, String(at), content] as const),
    ...rows.flatMap(({ key, cells }) =>
      form.told.map(
        ({ heading }) => [`${key.mark}-${key.number}/${key.line}`, heading, cells.get(heading)] as const,
      ),
    ),
  ]);
}
