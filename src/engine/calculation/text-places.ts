import { CellValueType, type IRange } from "@univerjs/core";
import {
  type ArrayValueObject,
  type BaseReferenceObject,
  ERROR_TYPE_SET,
  type ErrorType,
  type FunctionVariantType,
  NumberValueObject,
  StringValueObject,
  ValueObjectFactory,
} from "@univerjs/engine-formula";
import type { EngineCell } from "./formula";
import { singleOf } from "./single-value";

/**
 * Where which text stands in a column. Sheets of a plan count, add up and look up by the name of each line in the names
 * of all: compared cell by cell, that grows with the square of the lines. Only a text that means itself is looked up
 * so; what reads like a number, a date or an error, and texts with marks such as `*`, `?` or `<`, are left to the
 * engine.
 */

/** Beyond this a criterion has its answer from the engine: nobody's names are as many. */
const MAX_KNOWN = 20_000;

/** Texts as they are compared, without regard to case; nothing for one that means more than itself. */
const compared = new Map<string, string | undefined>();

export function comparedForm(text: string): string | undefined {
  if (compared.has(text)) return compared.get(text);
  if (compared.size >= MAX_KNOWN) compared.clear();
  const form = isPlain(text) ? text.toLocaleLowerCase() : undefined;
  compared.set(text, form);
  return form;
}

/** The engine itself is asked what it would take a text for. */
function isPlain(text: string): boolean {
  if (text === "" || /^[=<>]|[*?~]/.test(text)) return false;
  const taken = ValueObjectFactory.create(text);
  return taken instanceof StringValueObject && taken.getValue() === text && isNoNumber(taken);
}

const isNoNumber = (text: StringValueObject) => text.convertToNumberObjectValue().isError();

/** What a criterion says, where it is one text that means itself; a cell or a list of one counts as what it holds. */
export function plainTextOf(given: FunctionVariantType | undefined): string | undefined {
  const text = textOf(given);
  return text === undefined ? undefined : comparedForm(text);
}

function textOf(given: FunctionVariantType | undefined): string | undefined {
  const value = singleOf(given);
  return value instanceof StringValueObject ? value.getValue() : undefined;
}

/** A number, or a yes or no. A number with the format of a text is one, and what kind is unknown only the engine knows. */
const isFigure = (cell: EngineCell | undefined): boolean =>
  (cell?.t === CellValueType.NUMBER || cell?.t === CellValueType.BOOLEAN) &&
  (cell.s === undefined || !JSON.stringify(cell.s).includes("@"));

/** The rows of each text of a column, from one row on, as far as it was read. */
class ColumnTexts {
  private readonly rows = new Map<string, number[]>();
  /** False once a cell was met of which only the engine knows how it compares. */
  isSure = true;

  constructor(private next: number) {}

  readTo(last: number, cellAt: (row: number) => EngineCell | undefined): void {
    for (; this.isSure && this.next <= last; this.next += 1) this.take(cellAt(this.next), this.next);
  }

  private take(cell: EngineCell | undefined, row: number): void {
    const { v, t } = cell ?? {};
    if (v === undefined || v === null) return;
    if (t === CellValueType.STRING && typeof v === "string") {
      if (!ERROR_TYPE_SET.has(v as ErrorType)) this.note(v.toLocaleLowerCase(), row);
    } else this.isSure &&= isFigure(cell);
  }

  private note(text: string, row: number): void {
    const known = this.rows.get(text);
    if (known === undefined) this.rows.set(text, [row]);
    else known.push(row);
  }

  /** The rows of a text, as far as the column was read. */
  rowsOf(text: string): readonly number[] {
    return this.rows.get(text) ?? NONE;
  }
}

const NONE: readonly number[] = [];

/** How many of some rows in their order stand above a row or are it. */
function countTo(rows: readonly number[], last: number): number {
  let [low, high] = [0, rows.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rows[middle] as number) <= last) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The rows that stand in both of two lists, each in its order; the shorter one is walked through. */
export function rowsInBoth(a: readonly number[], b: readonly number[]): readonly number[] {
  const [few, many] = a.length < b.length ? [a, b] : [b, a];
  return few.filter((row) => many[countTo(many, row) - 1] === row);
}

/** A number that the engine compares with others by its very value: it rounds fractions and dates. */
export const isPlainInteger = (value: unknown): value is NumberValueObject =>
  value instanceof NumberValueObject && Number.isSafeInteger(value.getValue()) && value.getPattern() === "";

/** The first place of each text and whole number in a list of one row or column. */
class ListPlaces {
  private readonly places = new Map<string | number, number>();
  /** False where a number of the list may equal another one than its own. */
  hasPlainNumbers = true;

  constructor(list: ArrayValueObject) {
    const isRow = list.getRowCount() === 1;
    list.iterator((value, row, column) => {
      const form = this.formOf(value);
      const place = isRow ? column : row;
      if (form !== undefined && !this.places.has(form)) this.places.set(form, place);
    });
  }

  placeOf(wanted: string | number): number | undefined {
    return this.places.get(wanted);
  }

  private formOf(value: unknown): string | number | undefined {
    if (value instanceof StringValueObject) return value.getValue().toLocaleLowerCase();
    if (isPlainInteger(value)) return value.getValue();
    if (value instanceof NumberValueObject) this.hasPlainNumbers = false;
    return undefined;
  }
}

/** Shorter columns are as quickly compared. */
const MIN_CELLS = 12;

const isLong = ({ startRow, endRow }: IRange) => endRow - startRow + 1 >= MIN_CELLS;

/** The columns and lists that were read since cells last became others. */
export class TextPlaces {
  private columns = new Map<string, ColumnTexts>();
  private lists = new WeakMap<ArrayValueObject, ListPlaces>();
  private counts = new Map<string, number>();

  forget(): void {
    this.columns = new Map();
    this.lists = new WeakMap();
    this.counts = new Map();
  }

  /**
   * How many cells of a range meet a criterion of which only the engine knows what it means, such as `?*`: each line of
   * a plan may ask the same of a whole column.
   */
  countOnce(
    range: BaseReferenceObject,
    criterion: FunctionVariantType | undefined,
    count: () => number | undefined,
  ): number | undefined {
    const [place, text] = [range.getRangePosition(), textOf(criterion)];
    if (text === undefined || !isLong(place)) return undefined;
    const { startRow, endRow, startColumn, endColumn } = place;
    const key = `${range.getSheetId()} ${startRow} ${endRow} ${startColumn} ${endColumn} ${text}`;
    const counted = this.counts.get(key) ?? count();
    if (counted !== undefined) this.counts.set(key, counted);
    return counted;
  }

  /** The rows of a range that hold a text; nothing where the engine has to compare. */
  rows(range: BaseReferenceObject, text: string): readonly number[] | undefined {
    const place = range.getRangePosition();
    const { startRow, endRow, startColumn, endColumn } = place;
    if (startColumn !== endColumn || !isLong(place)) return undefined;
    const key = `${range.getSheetId()} ${startColumn} ${startRow}`;
    const known = this.columns.get(key);
    const column = known ?? new ColumnTexts(startRow);
    if (known === undefined) this.columns.set(key, column);
    column.readTo(endRow, (row) => range.getCellData(row, startColumn) as EngineCell | undefined);
    if (!column.isSure) return undefined;
    const rows = column.rowsOf(text);
    const inside = countTo(rows, endRow);
    return inside === rows.length ? rows : rows.slice(0, inside);
  }

  /**
   * The first place of a text or a whole number in a list, from 0; -1 where it has none, nothing where the engine has
   * to look for it.
   */
  placeIn(list: ArrayValueObject, wanted: string | number): number | undefined {
    const known = this.lists.get(list);
    const places = known ?? new ListPlaces(list);
    if (known === undefined) this.lists.set(list, places);
    if (typeof wanted === "number" && !places.hasPlainNumbers) return undefined;
    return places.placeOf(wanted) ?? -1;
  }
}
