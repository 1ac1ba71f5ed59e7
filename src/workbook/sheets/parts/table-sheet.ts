import { cellName } from "../../../formula/addresses";
import type { CellModel, Role, SheetModel, WordList } from "../../model/sheet-model";
import { type Filled, fixedBlock, heading, mark, note, overScrolled, type Row, title } from "./sheet-parts";

/** Address of another column's cell in the same row. */
export type CellOf<Key extends string> = (key: Key) => string;

/** A column of a table. What it holds may be a figure, a text or a formula; formulas wait for a filled row. */
export interface TableColumn<Key extends string> {
  readonly heading: string;
  readonly filled: Filled;
  /** Pixels. */
  readonly width: number;
  readonly format?: string;
  readonly role?: Role;
  readonly wrap?: boolean;
  /** Offered as a drop-down. */
  readonly words?: readonly string[];
  /** The words of a check are picked out by colour. */
  readonly isStatus?: boolean;
  /** The words about a blade's band and hardening are. */
  readonly isBladeStatus?: boolean;
  /** Cells without which a formula would only fail: it waits until all are filled. */
  readonly needs?: (at: CellOf<Key>, index: number) => readonly string[];
  readonly content: (at: CellOf<Key>, index: number) => number | string | null;
}

export type TableColumns<Key extends string> = Readonly<Record<Key, TableColumn<Key>>>;

interface Looks {
  readonly title: string;
  readonly note: string;
  /** Columns that stay in sight. */
  readonly frozenColumns?: number;
  readonly portrait?: boolean;
}

/** Pixels of a column of steels: the longest name that stands in a plan, X50CrMoV15, beside the arrow of its list. */
export const STEEL_WIDTH = 98;

/** Rows under a table that are watched for lines typed there: nothing counts them. */
const GUARDED_ROWS = 40;

const NOTE = 1;
const MARKS = 2;
/** Row of the headings of every table, counted from 0. */
export const HEADINGS = 3;
/** First row below the headings of every table, counted from 0. */
export const FIRST_ROW = 4;

/** A formula that stays empty while one of the conditions holds. */
function waiting(formula: string, empty: readonly string[]): string {
  if (empty.length === 0) return `=${formula}`;
  return `=IF(${empty.length === 1 ? empty[0] : `OR(${empty.join(",")})`},"",${formula})`;
}

/** A sheet of one table: marks, headings, then a row a line. The first column names the line. */
export class TableSheet<Key extends string> {
  private readonly keys: readonly Key[];

  constructor(
    readonly name: string,
    private readonly columns: TableColumns<Key>,
    readonly count: number,
    private readonly looks: Looks,
  ) {
    this.keys = Object.keys(columns) as Key[];
  }

  private place(key: Key): number {
    return this.keys.indexOf(key);
  }

  /** Address of a cell, for a formula on any sheet. */
  at(key: Key, index: number): string {
    return `'${this.name}'!${cellName(FIRST_ROW + index, this.place(key), "both")}`;
  }

  /** Address of a whole column, or of all from one to another, for a formula on any sheet. */
  block(key: Key, last = key): string {
    const first = this.place(key);
    return `'${this.name}'!${fixedBlock(FIRST_ROW, first, this.count, this.place(last) - first + 1)}`;
  }

  /** Columns with their headings, for a function that reads tables. */
  headed(key: Key, last: Key): string {
    const first = this.place(key);
    return `'${this.name}'!${fixedBlock(HEADINGS, first, this.count + 1, this.place(last) - first + 1)}`;
  }

  /** A cell of the line that a cell names. */
  lookup(key: Key, wanted: string): string {
    return `INDEX(${this.block(key)},MATCH(${wanted},${this.block(this.firstKey)},0))`;
  }

  /** Addresses of the columns that the sheet works out, for a look at whether someone typed over them. */
  get workedBlocks(): readonly string[] {
    return this.keys.filter((key) => this.columns[key].filled === "calc").map((key) => this.block(key));
  }

  get firstKey(): Key {
    const [key] = this.keys;
    if (key === undefined) throw new RangeError(`${this.name}: a table needs a column`);
    return key;
  }

  /** Every cell of the table below its headings. */
  body(): string {
    return `'${this.name}'!${fixedBlock(FIRST_ROW, 0, this.count, this.keys.length)}`;
  }

  private cell(key: Key, index: number): CellModel {
    const { content, format, role, wrap, filled, needs } = this.columns[key];
    const at: CellOf<Key> = (other) => cellName(FIRST_ROW + index, this.place(other), "column");
    const given = content(at, index);
    const isFormula = typeof given === "string" && given.startsWith("=");
    const own = key === this.firstKey ? [] : [at(this.firstKey)];
    const awaited = [...own, ...(needs?.(at, index) ?? [])].map((cell) => `${cell}=""`);
    return {
      content: isFormula ? waiting(given.slice(1), awaited) : (given ?? ""),
      role: role ?? (filled === "type" ? "typed" : "worked"),
      ...(format === undefined ? {} : { format }),
      ...(wrap === undefined ? {} : { wrap }),
    };
  }

  /** A row under the table says so when something is typed into it. */
  private guardRow(row: number): Row {
    const at = this.guardColumn;
    const filled = (from: number, to: number) =>
      to < from ? "" : `+COUNTA(${cellName(row, from, "column")}:${cellName(row, to, "column")})`;
    const others = `0${filled(0, at - 1)}${filled(at + 1, this.keys.length - 1)}`;
    const said = `=IF(${others}=0,"","CHECK: under the table, counts nowhere: make room with template --from")`;
    return [...Array.from({ length: at }, () => undefined), { role: "note", content: said }];
  }

  /** The first column that the sheet fills: words under it stand in nobody's way. */
  private get guardColumn(): number {
    return this.keys.findIndex((key) => this.columns[key].filled === "calc");
  }

  private get guards(): boolean {
    return this.columns[this.firstKey].filled === "type" && this.guardColumn > 0;
  }

  /** How many rows are filled under the table, without an equals sign; empty where that cannot be. */
  get filledBelow(): string {
    if (!this.guards) return "";
    const rows = fixedBlock(FIRST_ROW + this.count, this.guardColumn, GUARDED_ROWS);
    return `COUNTIF('${this.name}'!${rows},"CHECK*")`;
  }

  private get lines(): readonly [number, number] {
    return [FIRST_ROW, FIRST_ROW + this.count - 1];
  }

  private lists(): WordList[] {
    return this.keys.flatMap((key) => {
      const { words } = this.columns[key];
      return words === undefined ? [] : [{ column: this.place(key), words }];
    });
  }

  model(): SheetModel {
    const { keys, columns, looks } = this;
    const { frozenColumns = 1 } = looks;
    const rows: Row[] = [
      overScrolled(frozenColumns, title(looks.title)),
      overScrolled(frozenColumns, note(looks.note)),
      keys.map((key) => mark(columns[key].filled)),
      keys.map((key) => heading(columns[key].heading)),
      ...Array.from({ length: this.count }, (_, index) => keys.map((key) => this.cell(key, index))),
      ...(this.guards
        ? Array.from({ length: GUARDED_ROWS }, (_, row) => this.guardRow(FIRST_ROW + this.count + row))
        : []),
    ];
    return {
      name: this.name,
      rows,
      columnWidths: keys.map((key) => columns[key].width),
      rowHeights: { 0: 28, [NOTE]: 20, [MARKS]: 18 },
      frozenRows: FIRST_ROW,
      frozenColumns,
      lines: this.lines,
      wordLists: this.lists(),
      statusColumns: keys.filter((key) => columns[key].isStatus).map((key) => this.place(key)),
      bladeStatusColumns: keys.filter((key) => columns[key].isBladeStatus).map((key) => this.place(key)),
      tables: [
        {
          name: this.name.replace(/[^A-Za-z0-9]+/g, "_"),
          row: HEADINGS,
          column: 0,
          rows: this.count + 1,
          columns: keys.length,
        },
      ],
      print: { landscape: looks.portrait !== true, repeatedRows: [MARKS, HEADINGS] },
    };
  }
}

type Rest<Key extends string> = Partial<Omit<TableColumn<Key>, "heading" | "width" | "content" | "filled">>;

/** A column the smith fills in, from a list of what is known; empty below it. */
export function typedColumn<Key extends string>(
  heading: string,
  width: number,
  known: readonly (number | string | null | undefined)[],
  rest: Rest<Key> = {},
): TableColumn<Key> {
  return { heading, width, filled: "type", content: (_, index) => known[index] ?? null, ...rest };
}

/** The columns of a table that commands write row by row: headings with their widths, empty below them. */
export function writtenColumns<Key extends string>(
  headings: Readonly<Record<Key, string>>,
  widths: Readonly<Record<Key, number>>,
  formats?: Readonly<Partial<Record<Key, string>>>,
): TableColumns<Key> {
  const keys = Object.keys(headings) as Key[];
  const column = (key: Key) => {
    const format = formats?.[key];
    const rest = { wrap: true, ...(format === undefined ? {} : { format }) };
    return typedColumn<Key>(headings[key], widths[key], [], rest);
  };
  return Object.fromEntries(keys.map((key) => [key, column(key)])) as TableColumns<Key>;
}

/** A column the sheet works out; `formula` without its equals sign. */
export function calcColumn<Key extends string>(
  heading: string,
  width: number,
  formula: (at: CellOf<Key>, index: number) => string,
  rest: Rest<Key> & { readonly filled?: Filled } = {},
): TableColumn<Key> {
  return { heading, width, filled: "calc", content: (at, index) => `=${formula(at, index)}`, ...rest };
}

/** A column that is worked out until the smith types over it; figures known already are typed. */
export function eitherColumn<Key extends string>(
  heading: string,
  width: number,
  known: readonly (number | string | null | undefined)[],
  formula: (at: CellOf<Key>, index: number) => string,
  rest: Rest<Key> = {},
): TableColumn<Key> {
  const content = (at: CellOf<Key>, index: number) => known[index] ?? `=${formula(at, index)}`;
  return { heading, width, filled: "either", content, ...rest };
}

/** The value of a column of rows of data. */
export function pick<Row extends readonly unknown[], Value = Row[number]>(
  rows: readonly Row[],
  column: number,
): (Value | null)[] {
  return rows.map((row) => (row[column] ?? null) as Value | null);
}

/** Days as spreadsheets count them, from a date written year-month-day. */
export function dateSerial(date: string): number {
  const day = Date.parse(`${date}T00:00:00Z`) / 86_400_000;
  if (!Number.isInteger(day)) throw new RangeError(`${date}: not a date`);
  return day + 25_569;
}

export const DATE_FORMAT = "yyyy-mm-dd";
