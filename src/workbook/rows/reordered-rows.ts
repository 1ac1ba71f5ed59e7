import { type Rectangle, readCellParts } from "../../formula/addresses";
import type { Token } from "../../formula/pieces";
import { referencesIn } from "../../formula/references";
import { sheetOfPrefix } from "../../formula/sheet-names";
import { tokensOf } from "../../formula/tokens";

/** A cell of a table. What it holds besides a formula stays with whoever asked. */
export interface RowCell<Data> {
  /** With its equals sign. */
  readonly formula?: string;
  readonly data?: Data;
}

/** The rows of a table below its headings, first and last included, counted from 0. */
export interface TableRows<Data> {
  readonly sheet: string;
  readonly first: number;
  readonly last: number;
  readonly columns: number;
  at(row: number, column: number): RowCell<Data> | undefined;
}

/** A cell that holds something else once the rows have another order. */
export interface MovedCell<Data> {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** The row whose cell stands here now; `undefined` in a row that is new and blank. */
  readonly from: number | undefined;
  /** The formula it holds; without one it holds the data, and without either it is blank. */
  readonly formula?: string;
  readonly data?: Data;
}

/** Where each row comes from, counted from the first of the table; `undefined` is a blank one. */
export type RowOrder = readonly (number | undefined)[];

/** How formulas are read in another row of their table. */
interface Reading {
  readonly sheet: string;
  /** Rows of the table. */
  readonly first: number;
  readonly last: number;
  /** Sheets whose rows are the rows of the table; all where it is the formula of a column that is read. */
  readonly sheets: ReadonlySet<string> | "all";
  /** Whether a number of the row, as in "S3", counts up too. */
  readonly countsUp: boolean;
}

const ENDS_IN_NUMBER = /(\d+)"$/;

function numberInOtherRow(text: string, from: number, to: number): string | undefined {
  const [, digits] = ENDS_IN_NUMBER.exec(text) ?? [];
  return Number(digits) === from + 1 ? text.replace(ENDS_IN_NUMBER, `${to + 1}"`) : undefined;
}

/** A cell of the own row is one of the other row; one that is named by its distance keeps it within the table. */
function cellInOtherRow(
  text: string,
  { first, last }: Reading,
  from: number,
  to: number,
): string | undefined {
  const parts = readCellParts(text);
  if (parts === undefined) return undefined;
  const { row, isRowFixed } = parts;
  const isNear = !isRowFixed && row >= first - 1 && row <= last;
  return row === from || isNear ? text.replace(/\d+$/, String(row + to - from + 1)) : undefined;
}

/** The sheet on which the cell of a piece stands. The second end of a range stands on the sheet of the first. */
function sheetNamed(tokens: readonly Token[], at: number, own: string): string | null {
  const before = tokens[at - 1];
  if (before?.kind === "sheet") return sheetOfPrefix(before.text);
  return before?.text === ":" && tokens[at - 2]?.kind === "cell" ? sheetNamed(tokens, at - 2, own) : own;
}

/** The formula of a cell in one row as it reads in another: what it names of its own row, it names of the other. */
function inOtherRow(formula: string, reading: Reading, from: number, to: number): string {
  const { sheet, sheets, first, countsUp } = reading;
  const tokens = tokensOf(formula);
  const written = ({ kind, text }: Token, at: number) => {
    if (kind === "text" && countsUp) return numberInOtherRow(text, from - first, to - first);
    const named = kind === "cell" ? sheetNamed(tokens, at, sheet) : null;
    const isOfRows = named !== null && (sheets === "all" || sheets.has(named));
    return isOfRows ? cellInOtherRow(text, reading, from, to) : undefined;
  };
  return tokens.map((token, at) => written(token, at) ?? token.text).join("");
}

/** A row that no sheet has: formulas that are alike but for the row they stand in read the same there. */
const NO_ROW = 9_999_998;

/** The formula that a column has in most of its rows, as it reads in each; `undefined` where there is none. */
function usualFormula<Data>(
  { first, last, at }: TableRows<Data>,
  column: number,
  reading: Reading,
): ((row: number) => string) | undefined {
  const counts = new Map<string, { count: number; row: number; formula: string }>();
  let all = 0;
  for (let row = last; row >= first; row -= 1) {
    const formula = at(row, column)?.formula;
    if (formula === undefined) continue;
    all += 1;
    const key = inOtherRow(formula, reading, row, NO_ROW);
    const known = counts.get(key) ?? { count: 0, row, formula };
    known.count += 1;
    counts.set(key, known);
  }
  const [most] = [...counts.values()].sort((a, b) => b.count - a.count);
  if (most === undefined || most.count * 2 < all || (most.count === 1 && last > first)) return undefined;
  return (row) => inOtherRow(most.formula, reading, most.row, row);
}

/** One column of a table while its rows change their order. */
class Column<Data> {
  private readonly reading: Reading;
  private readonly usual: ((row: number) => string) | undefined;

  constructor(
    private readonly table: TableRows<Data>,
    private readonly column: number,
    sheets: ReadonlySet<string>,
  ) {
    const { sheet, first, last } = table;
    this.reading = { sheet, first, last, sheets, countsUp: false };
    const ofColumn = { ...this.reading, sheets: "all" } as const;
    this.usual =
      usualFormula(table, column, ofColumn) ?? usualFormula(table, column, { ...ofColumn, countsUp: true });
  }

  /** What the cell of one row holds that takes the place of another; a row of nowhere is blank. */
  moved(from: number | undefined, row: number): MovedCell<Data> {
    const { sheet } = this.table;
    const { data, formula } = (from === undefined ? undefined : this.held(from)) ?? {};
    const place = { sheet, row, column: this.column, from, ...(data !== undefined && { data }) };
    if (this.usual !== undefined && (from === undefined || this.isUsual(from)))
      return { ...place, formula: this.usual(row) };
    if (formula === undefined || from === undefined) return place;
    return { ...place, formula: inOtherRow(formula, this.reading, from, row) };
  }

  private held(row: number): RowCell<Data> | undefined {
    return this.table.at(row, this.column);
  }

  private isUsual(row: number): boolean {
    const formula = this.held(row)?.formula;
    return formula !== undefined && formula === this.usual?.(row);
  }
}

function cellsOfColumn<Data>(
  table: TableRows<Data>,
  at: number,
  order: RowOrder,
  sheets: ReadonlySet<string>,
): MovedCell<Data>[] {
  const column = new Column(table, at, sheets);
  const { first } = table;
  return order.flatMap((source, place) =>
    source === place ? [] : [column.moved(source === undefined ? undefined : first + source, first + place)],
  );
}

/**
 * What the cells of tables hold once their rows stand in another order: what was typed goes with its row, the formula
 * of a column stays in it, and a formula of one's own goes along, reading its new row.
 *
 * @param tables - The table and those that have a row for each of its rows, in the same places.
 */
export function reorderedRows<Data>(tables: readonly TableRows<Data>[], order: RowOrder): MovedCell<Data>[] {
  const sheets = new Set(tables.map(({ sheet }) => sheet));
  return tables.flatMap((table) =>
    Array.from({ length: table.columns }, (_, column) => cellsOfColumn(table, column, order, sheets)).flat(),
  );
}

const isCell = ({ row, lastRow, column, lastColumn }: Rectangle) => row === lastRow && column === lastColumn;

/** The sheet whose rows a table repeats: its first column reads the same row there, unless somebody typed over it. */
function mirroredSheet<Data>({ sheet, first, last, at }: TableRows<Data>): string | undefined {
  for (let row = last; row >= first; row -= 1) {
    const formula = at(row, 0)?.formula;
    const named = formula === undefined ? [] : referencesIn(formula, sheet);
    const found = named.find(({ sheet: other, area }) => other !== sheet && isCell(area) && area.row === row);
    if (found !== undefined) return found.sheet;
  }
  return undefined;
}

/** Whether the first column of a table has a name that somebody typed. */
const hasOwnNames = <Data>({ first, last, at }: TableRows<Data>, isBlank: (data: Data) => boolean) =>
  Array.from({ length: last - first + 1 }, (_, place) => at(first + place, 0)).some(
    (cell) =>
      cell !== undefined && cell.formula === undefined && cell.data !== undefined && !isBlank(cell.data),
  );

/**
 * A table with all that repeat its rows, the one whose rows they are first. A table that repeats another but has rows
 * of its own stands alone.
 *
 * @param isBlank - Whether the data of a cell shows nothing.
 */
export function tablesTogether<Data>(
  tables: readonly TableRows<Data>[],
  asked: TableRows<Data>,
  isBlank: (data: Data) => boolean,
): TableRows<Data>[] {
  const repeated = tables.find(({ sheet }) => sheet === mirroredSheet(asked));
  if (repeated !== undefined && hasOwnNames(asked, isBlank)) return [asked];
  const own = repeated ?? asked;
  const same = tables.filter(
    (table) => table !== own && mirroredSheet(table) === own.sheet && table.last === own.last,
  );
  return [own, ...same];
}
