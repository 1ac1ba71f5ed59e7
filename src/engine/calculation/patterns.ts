import { columnOf, type Rectangle, readCellParts, SHEET_COLUMNS, SHEET_ROWS } from "../../formula/addresses";
import { type BareForm, bareForm, FIGURES, ROW_FIXED } from "../../formula/bare-form";
import type { Token } from "../../formula/pieces";
import { downColumnForm } from "../../formula/references";
import { sheetOfPrefix } from "../../formula/sheet-names";
import { tokensOf } from "../../formula/tokens";
import type { WorksheetFunction } from "../../functions/declare";
import { BUDGET, NameSizes } from "../budget";
import type { TableInput } from "../workbook-input";
import { type Area, meet } from "./area";
import { type OwnCall, ownCall } from "./own-call";
import { piecesOf } from "./pieces";
import type { ReadCells } from "./read-cells";
import type { Tree } from "./tree";

/** Functions that give something else each time they are asked. */
const VOLATILE = new Set(["RAND", "RANDBETWEEN", "RANDARRAY", "NOW"]);
/** Functions that give something else on another day. */
const DAILY = new Set(["TODAY"]);
/** Functions that read cells which no address in the formula names. */
const MOVING = new Set(["OFFSET", "INDIRECT"]);
/** Functions whose parts the engine works out apart, without moving their references. */
const APART = /\b(LAMBDA|LET)\b/i;

/** What a formula reads in one place: the ends of a range, and whether each keeps its row when the formula is moved. */
interface Reading {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  readonly isFixed: boolean;
  readonly lastRow: number;
  readonly lastColumn: number;
  readonly isLastFixed: boolean;
}

/** What all formulas of one form read in one place: the addresses that are its ends, by their place among all. */
type FormReading = Reading | { readonly sheet: number; readonly first: number; readonly last: number };

/** What is known of all formulas of one sheet that differ in their addresses and numbers alone. */
interface SheetForm {
  readonly key: string;
  readonly readings: readonly FormReading[];
  readonly renewal: Renewal;
  readonly isMoving: boolean;
  readonly form: Form | undefined;
}

/** The engine's tree of all formulas that say the same of other cells and with other numbers. */
export interface Form {
  tree: Tree | undefined;
}

/** When a formula is worked out anew though nothing that it reads became another. */
export type Renewal = "never" | "each day" | "always";

/** What a formula says, for all formulas that are alike down a column: taken apart once, moved for each. */
export class Pattern {
  /** The engine's tree, once it was asked for; `null` for a formula that cannot be read. */
  tree: Tree | null | undefined;
  /** Set where formulas that are alike but for their cells and numbers may share the tree. */
  form: Form | undefined;
  /** Its numbers, where it may share the tree. */
  numbers: readonly string[] = [];
  /** Set where it is nothing but a call of ours, which needs no tree. */
  own: OwnCall | undefined;
  private lastRead: ReadCells | undefined;

  constructor(
    /** The formula of the first cell, with its equals sign. */
    readonly text: string,
    readonly row: number,
    private readonly readings: readonly Reading[],
    /** When it comes to something else though its cells stay the same. */
    readonly renewal: Renewal,
    /** True where the cells that it reads are known only once it was worked out. */
    readonly isMoving: boolean,
    /** Why it is not worked out at all: it is beyond the budget. */
    readonly refusal?: string,
  ) {}

  /** True where one of the references that the formula of a row read may have given it one of some cells. */
  mayHaveRead(area: Area, row: number, read: ReadCells): boolean {
    const by = row - this.row;
    // Asked for every reader of every cell that became another: most of its references name other columns.
    return this.readings.some(
      (reading, at) =>
        isInColumns(reading, area) && read.mayBeIn(at, area) && meet(areaOf(reading, by), area),
    );
  }

  /** What a formula read, as one with others that read the same: most formulas down a column do. */
  shared(read: ReadCells): ReadCells {
    if (!read.isLike(this.lastRead)) this.lastRead = read;
    return this.lastRead ?? read;
  }

  /** Cells that the formula of a row names. */
  areasAt(row: number): Area[] {
    const by = row - this.row;
    return this.readings.map((reading) => areaOf(reading, by));
  }
}

const moved = (row: number, isFixed: boolean, by: number) =>
  isFixed ? row : (((row + by) % SHEET_ROWS) + SHEET_ROWS) % SHEET_ROWS;

function isInColumns({ sheet, column, lastColumn }: Reading, area: Area): boolean {
  if (sheet !== area.sheet) return false;
  return Math.min(column, lastColumn) <= area.lastColumn && Math.max(column, lastColumn) >= area.column;
}

/** Cells that a reference names so many rows further down. */
function areaOf(reading: Reading, by: number): Area {
  const { sheet, column, lastColumn } = reading;
  const a = moved(reading.row, reading.isFixed, by);
  const b = moved(reading.lastRow, reading.isLastFixed, by);
  return {
    sheet,
    row: Math.min(a, b),
    lastRow: Math.max(a, b),
    column: Math.min(column, lastColumn),
    lastColumn: Math.max(column, lastColumn),
  };
}

const fixed = (sheet: number, area: Rectangle): Reading => ({
  sheet,
  ...area,
  isFixed: true,
  isLastFixed: true,
});

/** What a formula of a form reads in one place. */
function readingBy(reading: FormReading, cells: BareForm["cells"]): Reading {
  if ("row" in reading) return reading;
  const [first, last] = [reading.first * FIGURES, reading.last * FIGURES];
  return {
    sheet: reading.sheet,
    row: cells[first] as number,
    column: cells[first + 1] as number,
    isFixed: ((cells[first + 2] as number) & ROW_FIXED) !== 0,
    lastRow: cells[last] as number,
    lastColumn: cells[last + 1] as number,
    isLastFixed: ((cells[last + 2] as number) & ROW_FIXED) !== 0,
  };
}

/** Half of a character: figures of an address are written as characters. */
const HALF = 1024;

/** The same for formulas of one form that are alike down a column. */
function downColumnKey({ cells, numbers }: BareForm, row: number): string {
  const figures: number[] = [];
  for (let at = 0; at < cells.length; at += FIGURES) {
    const isFixed = ((cells[at + 2] as number) & ROW_FIXED) !== 0;
    const distance = (cells[at] as number) - (isFixed ? 0 : row) + SHEET_ROWS;
    figures.push(
      (cells[at + 1] as number) * 2 + (isFixed ? 1 : 0),
      Math.floor(distance / HALF),
      distance % HALF,
    );
  }
  return `${String.fromCharCode(...figures)} ${numbers.join(" ")}`;
}

/** A piece of a formula, or a range from one piece to another. */
interface Span {
  readonly sheet: number;
  readonly first: Token;
  readonly last: Token;
}

/** What names, tables and sheets of a workbook stand for. */
export interface Book {
  readonly sheets: readonly string[];
  readonly names: Readonly<Record<string, string>>;
  readonly tables: readonly TableInput[];
}

/** Takes formulas apart, each form of formula once. */
export class Patterns {
  private readonly known = new Map<string, Pattern>();
  private readonly forms = new Map<string, Form>();
  /** By sheet and form; `null` where each formula of the form is read for itself. */
  private readonly bySheet = new Map<string, SheetForm | null>();
  private readonly ours: ReadonlyMap<string, WorksheetFunction>;
  private readonly sheets: ReadonlyMap<string, number>;
  private readonly names: ReadonlyMap<string, string>;
  private readonly tables: ReadonlyMap<string, TableInput>;
  private readonly sizes: NameSizes;

  /** @param functions - Ours, as the workbook may call them. */
  constructor({ sheets, names, tables }: Book, functions: readonly WorksheetFunction[]) {
    this.ours = new Map(functions.map((fn) => [fn.name, fn]));
    this.sheets = new Map(sheets.map((name, at) => [name.toLowerCase(), at]));
    this.names = new Map(Object.entries(names).map(([name, text]) => [name.toLowerCase(), text]));
    this.sizes = new NameSizes(this.names);
    this.tables = new Map(tables.map((table) => [table.name.toLowerCase(), table]));
  }

  /** @param text - With its equals sign. */
  of(text: string, sheet: number, row: number, column: number): Pattern {
    const bare = bareForm(text);
    const form = bare && this.formOf(bare, text, sheet);
    if (bare === undefined || form === undefined) return this.takenApart(text, sheet, row, column);
    const key = `${form.key} ${column} ${downColumnKey(bare, row)}`;
    const found = this.known.get(key);
    if (found !== undefined) return found;
    const readings = form.readings.map((reading) => readingBy(reading, bare.cells));
    const pattern = new Pattern(text, row, readings, form.renewal, form.isMoving);
    pattern.form = form.form;
    pattern.numbers = bare.numbers;
    return this.enter(key, pattern);
  }

  private enter(key: string, pattern: Pattern): Pattern {
    pattern.own = ownCall(pattern.text, this.ours);
    this.known.set(key, pattern);
    return pattern;
  }

  /** Forgets which formulas are alike: what was entered keeps its pattern, what comes later begins anew. */
  forget(): void {
    this.known.clear();
  }

  /** A formula that is read piece by piece. */
  private takenApart(text: string, sheet: number, row: number, column: number): Pattern {
    const form = APART.test(text) ? `${row} ${text}` : downColumnForm(text, row);
    const key = `${sheet} ${column} ${form}`;
    return this.known.get(key) ?? this.enter(key, this.read(text, sheet, row));
  }

  /** What is known of the formulas of a form; nothing where each has to be read for itself. */
  private formOf(bare: BareForm, text: string, sheet: number): SheetForm | undefined {
    if (text.length > BUDGET.letters) return undefined;
    const key = `${sheet} ${bare.form}`;
    const known = this.bySheet.get(key);
    if (known !== undefined) return known ?? undefined;
    const made = this.readForm(bare, text, sheet);
    this.bySheet.set(key, made ?? null);
    return made;
  }

  private readForm({ cells, numbers }: BareForm, text: string, sheet: number): SheetForm | undefined {
    const { refusal, renewal, isMoving, form, numbers: own } = this.read(text, sheet, 0);
    const tokens = tokensOf(text);
    const addresses = tokens.filter(({ kind }) => kind === "cell");
    const areAll = addresses.length * FIGURES === cells.length && (!form || areAlike(own, numbers));
    if (refusal !== undefined || APART.test(text) || !areAll) return undefined;
    const places = new Map(addresses.map((address, at) => [address, at]));
    const readings = this.spansOf(tokens, sheet).flatMap((span): readonly FormReading[] => {
      const [first, last] = [places.get(span.first), places.get(span.last)];
      if (first === undefined || last === undefined) return this.readingsAt(span, []);
      return [{ sheet: span.sheet, first, last }];
    });
    return { key: `form ${this.bySheet.size}`, readings, renewal, isMoving, form };
  }

  private read(text: string, sheet: number, row: number): Pattern {
    const refusal = this.sizes.refusal(text);
    if (refusal !== undefined) return new Pattern(text, row, [], "never", false, refusal);
    const tokens = tokensOf(text).filter(({ kind }) => kind !== "space");
    const calls = this.callsOf(tokens, []);
    const readings = this.readingsOf(tokens, sheet, []);
    const isMoving = calls.some((name) => MOVING.has(name)) || tokens.some(isLooseRange);
    const pattern = new Pattern(text, row, readings, renewalOf(calls), isMoving);
    if (!isMoving && !APART.test(text)) this.enterForm(pattern, tokens, readings.length);
    return pattern;
  }

  /** Functions that a formula calls, itself or by a name. @param inside - Names that are being read already. */
  private callsOf(tokens: readonly Token[], inside: readonly string[]): string[] {
    return tokens.flatMap(({ kind, text }) => {
      if (kind === "call") return [text.toUpperCase()];
      const key = text.toLowerCase();
      const named = kind === "name" && !inside.includes(key) ? this.names.get(key) : undefined;
      return named === undefined ? [] : this.callsOf(tokensOf(named), [...inside, key]);
    });
  }

  /** A formula shares its tree where each of its references is one area. */
  private enterForm(pattern: Pattern, tokens: readonly Token[], areas: number): void {
    const pieces = piecesOf(tokens);
    if (pieces === undefined || pieces.references !== areas) return;
    const known = this.forms.get(pieces.form);
    const form = known ?? { tree: undefined };
    if (known === undefined) this.forms.set(pieces.form, form);
    pattern.form = form;
    pattern.numbers = pieces.numbers;
  }

  /** @param inside - Names that are being read already: one may be defined by itself. */
  private readingsOf(tokens: readonly Token[], own: number, inside: readonly string[]): Reading[] {
    return this.spansOf(tokens, own).flatMap((span) => this.readingsAt(span, inside));
  }

  /** What may be references: single pieces, and ranges with both of their ends. */
  private spansOf(all: readonly Token[], own: number): Span[] {
    const tokens = all.filter(({ kind }) => kind !== "space");
    const found: Span[] = [];
    for (let at = 0; at < tokens.length; at += 1) {
      const before = tokens[at - 1];
      const sheet = before?.kind === "sheet" ? this.sheetNamed(before.text) : own;
      if (sheet === undefined) continue;
      const last = rangeEnd(tokens, at);
      found.push({ sheet, first: tokens[at] as Token, last: tokens[last] as Token });
      at = last;
    }
    return found;
  }

  /** What one reference reads; nothing for a piece that is none. */
  private readingsAt({ sheet, first, last }: Span, inside: readonly string[]): readonly Reading[] {
    if (first.kind === "name") return this.named(first.text, sheet, inside);
    return endsOf(sheet, first, last);
  }

  private sheetNamed(prefix: string): number | undefined {
    const name = sheetOfPrefix(prefix);
    return name === null ? undefined : this.sheets.get(name.toLowerCase());
  }

  private named(name: string, own: number, inside: readonly string[]): Reading[] {
    const key = name.toLowerCase();
    const table = this.tables.get(key);
    if (table !== undefined) return this.tableReading(table);
    const text = this.names.get(key);
    if (text === undefined || inside.includes(key)) return [];
    const read = this.readingsOf(tokensOf(text), own, [...inside, key]);
    return read.map((reading) => ({ ...reading, isFixed: true, isLastFixed: true }));
  }

  private tableReading({ sheet: name, row, column, rows, headings }: TableInput): Reading[] {
    const sheet = this.sheets.get(name.toLowerCase());
    if (sheet === undefined) return [];
    const [lastRow, lastColumn] = [row + rows - 1, column + headings.length - 1];
    return [fixed(sheet, { row, column, lastRow, lastColumn })];
  }
}

function renewalOf(calls: readonly string[]): Renewal {
  if (calls.some((name) => VOLATILE.has(name))) return "always";
  return calls.some((name) => DAILY.has(name)) ? "each day" : "never";
}

/** Where the second end of a range stands that begins at a piece; the piece itself where it is no range. */
function rangeEnd(tokens: readonly Token[], at: number): number {
  if (tokens[at]?.kind !== "cell" || tokens[at + 1]?.text !== ":") return at;
  const end = tokens[at + 2]?.kind === "sheet" ? at + 3 : at + 2;
  return tokens[end]?.kind === "cell" ? end : at;
}

/** What a reference to cells, rows or columns reads; nothing for a piece that is none. */
function endsOf(sheet: number, first: Token, last: Token): readonly Reading[] {
  if (first.kind === "columns" || first.kind === "rows") return [fixed(sheet, wholeArea(first))];
  if (first.kind !== "cell") return [];
  const [a, b] = [readCellParts(first.text), readCellParts(last.text)];
  if (a === undefined || b === undefined) return [];
  const [end, lastEnd] = [
    { row: a.row, column: a.column, isFixed: a.isRowFixed },
    { lastRow: b.row, lastColumn: b.column, isLastFixed: b.isRowFixed },
  ];
  return [{ sheet, ...end, ...lastEnd }];
}

function wholeArea({ kind, text }: Token): Rectangle {
  const [first = "", last = ""] = text.replaceAll("$", "").split(":");
  if (kind === "columns")
    return { row: 0, lastRow: SHEET_ROWS - 1, column: columnOf(first), lastColumn: columnOf(last) };
  return { row: Number(first) - 1, lastRow: Number(last) - 1, column: 0, lastColumn: SHEET_COLUMNS - 1 };
}

const areAlike = (some: readonly string[], others: readonly string[]) =>
  some.length === others.length && some.every((piece, at) => piece === others[at]);

/** A colon between things that are not both addresses: where such a range ends is known only by working it out. */
function isLooseRange({ text }: Token, at: number, tokens: readonly Token[]): boolean {
  if (text !== ":") return false;
  const next = tokens[at + 1]?.kind === "sheet" ? tokens[at + 2] : tokens[at + 1];
  return tokens[at - 1]?.kind !== "cell" || next?.kind !== "cell";
}
