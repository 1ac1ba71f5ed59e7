import { columnOf, type Rectangle, readCellParts, SHEET_COLUMNS, SHEET_ROWS } from "../../formula/addresses";
import type { Token } from "../../formula/pieces";
import { downColumnForm } from "../../formula/references";
import { sheetOfPrefix } from "../../formula/sheet-names";
import { tokensOf } from "../../formula/tokens";
import type { WorksheetFunction } from "../../functions/declare";
import { NameSizes } from "../budget";
import type { TableInput } from "../workbook-input";
import { type Area, meet } from "./area";
import { type OwnCall, ownCall } from "./own-call";
import { piecesOf } from "./pieces";
import type { Tree } from "./tree";

/** Functions that give something else each time they are asked. */
const VOLATILE = new Set(["RAND", "RANDBETWEEN", "RANDARRAY", "NOW"]);
/** Functions that give something else on another day. */
const DAILY = new Set(["TODAY"]);
/** Functions that read cells which no address in the formula names. */
const MOVING = new Set(["OFFSET", "INDIRECT"]);
/** Functions whose parts the engine works out apart, without moving their references. */
const APART = /\b(LAMBDA|LET)\b/i;

/** One end of a range, and whether it keeps its row when the formula is moved down. */
interface End {
  readonly row: number;
  readonly column: number;
  readonly isFixed: boolean;
}

interface Reading {
  readonly sheet: number;
  readonly ends: readonly [End, End];
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

  /** True where one of some references of the formula of a row, a bit for each, names one of some cells. */
  names(area: Area, row: number, references: number): boolean {
    const by = row - this.row;
    return this.readings.some(
      (reading, at) => (references & (1 << at)) !== 0 && meet(areaOf(reading, by), area),
    );
  }

  /** Cells that the formula of a row names. */
  areasAt(row: number): Area[] {
    const by = row - this.row;
    return this.readings.map((reading) => areaOf(reading, by));
  }
}

const moved = ({ row, isFixed }: End, by: number) =>
  isFixed ? row : (((row + by) % SHEET_ROWS) + SHEET_ROWS) % SHEET_ROWS;

/** Cells that a reference names so many rows further down. */
function areaOf({ sheet, ends: [first, last] }: Reading, by: number): Area {
  const a = moved(first, by);
  const b = moved(last, by);
  return {
    sheet,
    row: Math.min(a, b),
    lastRow: Math.max(a, b),
    column: Math.min(first.column, last.column),
    lastColumn: Math.max(first.column, last.column),
  };
}

const fixed = ({ row, column, lastRow, lastColumn }: Rectangle): [End, End] => [
  { row, column, isFixed: true },
  { row: lastRow, column: lastColumn, isFixed: true },
];

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
    const form = APART.test(text) ? `${row} ${text}` : downColumnForm(text, row);
    const key = `${sheet} ${column} ${form}`;
    const found = this.known.get(key);
    if (found !== undefined) return found;
    const pattern = this.read(text, sheet, row);
    pattern.own = ownCall(text, this.ours);
    this.known.set(key, pattern);
    return pattern;
  }

  /** Forgets which formulas are alike: what was entered keeps its pattern, what comes later begins anew. */
  forget(): void {
    this.known.clear();
  }

  private read(text: string, sheet: number, row: number): Pattern {
    const refusal = this.sizes.refusal(text);
    if (refusal !== undefined) return new Pattern(text, row, [], "never", false, refusal);
    const tokens = tokensOf(text).filter(({ kind }) => kind !== "space");
    const calls = tokens.flatMap(({ kind, text: name }) => (kind === "call" ? [name.toUpperCase()] : []));
    const readings = this.readingsOf(tokens, sheet, []);
    const isMoving = calls.some((name) => MOVING.has(name)) || tokens.some(isLooseRange);
    const pattern = new Pattern(text, row, readings, renewalOf(calls), isMoving);
    if (!isMoving && !APART.test(text)) this.enterForm(pattern, tokens, readings.length);
    return pattern;
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
    const found: Reading[] = [];
    for (let at = 0; at < tokens.length; at += 1) {
      const before = tokens[at - 1];
      const sheet = before?.kind === "sheet" ? this.sheetNamed(before.text) : own;
      if (sheet === undefined) continue;
      const last = rangeEnd(tokens, at);
      found.push(...this.readingsAt(tokens.slice(at, last + 1), sheet, inside));
      at = last;
    }
    return found;
  }

  /** What one reference reads; nothing for a piece that is none. */
  private readingsAt(pieces: readonly Token[], sheet: number, inside: readonly string[]): readonly Reading[] {
    const [first, last = first] = [pieces[0], pieces.at(-1)];
    if (first === undefined || last === undefined) return [];
    if (first.kind === "name") return this.named(first.text, sheet, inside);
    const ends = endsOf(first, last);
    return ends === undefined ? [] : [{ sheet, ends }];
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
    const tokens = tokensOf(text).filter(({ kind }) => kind !== "space");
    return this.readingsOf(tokens, own, [...inside, key]).map(({ sheet, ends: [a, b] }) => ({
      sheet,
      ends: [
        { ...a, isFixed: true },
        { ...b, isFixed: true },
      ],
    }));
  }

  private tableReading({ sheet: name, row, column, rows, headings }: TableInput): Reading[] {
    const sheet = this.sheets.get(name.toLowerCase());
    if (sheet === undefined) return [];
    const [lastRow, lastColumn] = [row + rows - 1, column + headings.length - 1];
    return [{ sheet, ends: fixed({ row, column, lastRow, lastColumn }) }];
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

/** The ends of a reference to cells, rows or columns; `undefined` for a piece that is none. */
function endsOf(first: Token, last: Token): [End, End] | undefined {
  if (first.kind === "columns" || first.kind === "rows") return wholeEnds(first);
  if (first.kind !== "cell") return undefined;
  const [a, b] = [readCellParts(first.text), readCellParts(last.text)];
  if (a === undefined || b === undefined) return undefined;
  return [
    { row: a.row, column: a.column, isFixed: a.isRowFixed },
    { row: b.row, column: b.column, isFixed: b.isRowFixed },
  ];
}

function wholeEnds({ kind, text }: Token): [End, End] {
  const [first = "", last = ""] = text.replaceAll("$", "").split(":");
  if (kind === "columns")
    return fixed({ row: 0, lastRow: SHEET_ROWS - 1, column: columnOf(first), lastColumn: columnOf(last) });
  const lastColumn = SHEET_COLUMNS - 1;
  return fixed({ row: Number(first) - 1, lastRow: Number(last) - 1, column: 0, lastColumn });
}

/** A colon between things that are not both addresses: where such a range ends is known only by working it out. */
function isLooseRange({ text }: Token, at: number, tokens: readonly Token[]): boolean {
  if (text !== ":") return false;
  const next = tokens[at + 1]?.kind === "sheet" ? tokens[at + 2] : tokens[at + 1];
  return tokens[at - 1]?.kind !== "cell" || next?.kind !== "cell";
}
