import { CellValueType } from "@univerjs/core";
import {
  ArrayValueObject,
  type BaseReferenceObject,
  BaseValueObject,
  ERROR_TYPE_SET,
  ErrorType,
  ErrorValueObject,
  type FunctionVariantType,
  type IFunctionService,
  NumberValueObject,
  StringValueObject,
  ValueObjectFactory,
} from "@univerjs/engine-formula";
import type { EngineCell } from "./formula";

/**
 * Where which text stands in a column. Sheets of a plan count and look up the name of each line in the names of all:
 * compared cell by cell, that grows with the square of the lines. Only a text that means itself is looked up so; what
 * reads like a number, a date or an error, and texts with marks such as `*`, `?` or `<`, are left to the engine.
 */

type Calculate = (...values: FunctionVariantType[]) => FunctionVariantType;

/** Beyond this a criterion has its answer from the engine: nobody's names are as many. */
const MAX_KNOWN = 20_000;

/** Texts as they are compared, without regard to case; nothing for one that means more than itself. */
const compared = new Map<string, string | undefined>();

function comparedForm(text: string): string | undefined {
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

/** What a criterion says, where it is one text; a cell or a list of one counts as what it holds. */
function textOf(given: FunctionVariantType | undefined): string | undefined {
  if (given === undefined) return undefined;
  const value = given.isReferenceObject() ? (given as BaseReferenceObject).toArrayValueObject() : given;
  if (value instanceof ArrayValueObject) {
    const isOne = value.getRowCount() === 1 && value.getColumnCount() === 1;
    return isOne ? textOf(value.get(0, 0) ?? undefined) : undefined;
  }
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

  /** How often a text stands above a row or in it. */
  countTo(text: string, last: number): number {
    const rows = this.rows.get(text) ?? [];
    let [low, high] = [0, rows.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((rows[middle] as number) <= last) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

/** The first place of each text in a list of one row or column. */
class ListTexts {
  private readonly places = new Map<string, number>();

  constructor(list: ArrayValueObject) {
    const isRow = list.getRowCount() === 1;
    list.iterator((value, row, column) => {
      if (!(value instanceof StringValueObject)) return;
      const text = value.getValue().toLocaleLowerCase();
      if (!this.places.has(text)) this.places.set(text, isRow ? column : row);
    });
  }

  placeOf(text: string): number | undefined {
    return this.places.get(text);
  }
}

/** Shorter columns are as quickly compared. */
const MIN_CELLS = 12;

/** The columns and lists that were read since cells last became others. */
export class TextPlaces {
  private columns = new Map<string, ColumnTexts>();
  private lists = new WeakMap<ArrayValueObject, ListTexts>();

  forget(): void {
    this.columns = new Map();
    this.lists = new WeakMap();
  }

  /** How many cells of a range hold a text; nothing where the engine has to count. */
  count(range: BaseReferenceObject, text: string): number | undefined {
    const { startRow, endRow, startColumn, endColumn } = range.getRangePosition();
    const cells = endRow - startRow + 1;
    if (startColumn !== endColumn || !(cells >= MIN_CELLS)) return undefined;
    const key = `${range.getSheetId()} ${startColumn} ${startRow}`;
    const known = this.columns.get(key);
    const column = known ?? new ColumnTexts(startRow);
    if (known === undefined) this.columns.set(key, column);
    column.readTo(endRow, (row) => range.getCellData(row, startColumn) as EngineCell | undefined);
    return column.isSure ? column.countTo(text, endRow) : undefined;
  }

  /** The first place of a text in a list, from 0; nothing where it has none. */
  placeIn(list: ArrayValueObject, text: string): number | undefined {
    const known = this.lists.get(list);
    const texts = known ?? new ListTexts(list);
    if (known === undefined) this.lists.set(list, texts);
    return texts.placeOf(text);
  }
}

function countIf(places: TextPlaces, calculate: Calculate): Calculate {
  return (...values) => {
    const [range, criterion] = values;
    const text = range?.isReferenceObject() ? textOf(criterion) : undefined;
    const form = text === undefined ? undefined : comparedForm(text);
    const count = form === undefined ? undefined : places.count(range as BaseReferenceObject, form);
    return count === undefined ? calculate(...values) : NumberValueObject.create(count);
  };
}

const isExact = (kind: FunctionVariantType | undefined) =>
  kind instanceof BaseValueObject && kind.isNumber() && kind.getValue() === 0;

const isLine = (list: FunctionVariantType | undefined): list is ArrayValueObject =>
  list instanceof ArrayValueObject && (list.getRowCount() === 1) !== (list.getColumnCount() === 1);

function match(places: TextPlaces, calculate: Calculate): Calculate {
  return (...values) => {
    const [wanted, list, kind] = values;
    const isText = wanted instanceof StringValueObject && isLine(list) && isExact(kind);
    const form = isText ? comparedForm(wanted.getValue()) : undefined;
    if (form === undefined) return calculate(...values);
    const place = places.placeIn(list as ArrayValueObject, form);
    return place === undefined ? ErrorValueObject.create(ErrorType.NA) : NumberValueObject.create(place + 1);
  };
}

const QUICK: Readonly<Record<string, (places: TextPlaces, calculate: Calculate) => Calculate>> = {
  COUNTIF: countIf,
  MATCH: match,
};

/** Lets an engine's COUNTIF and MATCH find texts so. @returns What is to forget them when cells become others. */
export function findTextsByPlace(functions: IFunctionService): TextPlaces {
  const places = new TextPlaces();
  for (const [name, quick] of Object.entries(QUICK)) {
    const executor = functions.getExecutor(name as never);
    if (!executor) continue;
    const calculate = executor.calculate.bind(executor) as unknown as Calculate;
    executor.calculate = quick(places, calculate) as typeof executor.calculate;
  }
  return places;
}
