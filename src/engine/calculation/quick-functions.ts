import {
  ArrayValueObject,
  type BaseReferenceObject,
  BaseValueObject,
  ErrorType,
  ErrorValueObject,
  type FunctionVariantType,
  type IFunctionService,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/engine-formula";
import type { EngineCell } from "./formula";
import { addedBy, plus } from "./running-sums";
import { comparedForm, isPlainInteger, plainTextOf, rowsInBoth, TextPlaces } from "./text-places";

type Calculate = (...values: FunctionVariantType[]) => FunctionVariantType;
type Given = readonly (FunctionVariantType | undefined)[];

const isRange = (value: FunctionVariantType | undefined): value is BaseReferenceObject =>
  value?.isReferenceObject() === true;

/** True for ranges of the same rows, in which row and row belong together. */
function areBeside(a: BaseReferenceObject, b: BaseReferenceObject): boolean {
  const [one, other] = [a.getRangePosition(), b.getRangePosition()];
  return one.startRow === other.startRow && one.endRow === other.endRow;
}

/** What ranges and criteria come to where some of them are texts that mean themselves. */
interface Found {
  /** Rows in which these texts stand side by side. */
  readonly rows: readonly number[];
  /** The other ranges and their criteria. */
  readonly rest: readonly FunctionVariantType[];
}

/** Ranges of the same rows with their criteria; nothing where they are others. */
function pairsOf(given: Given): readonly (readonly [BaseReferenceObject, FunctionVariantType])[] | undefined {
  const [first] = given;
  const pairs: [BaseReferenceObject, FunctionVariantType][] = [];
  for (let at = 0; at < given.length; at += 2) {
    const [range, criterion] = [given[at], given[at + 1]];
    if (!isRange(first) || !isRange(range) || criterion === undefined) return undefined;
    if (!areBeside(first, range)) return undefined;
    pairs.push([range, criterion]);
  }
  return pairs;
}

function rowsOf(places: TextPlaces, range: BaseReferenceObject, criterion: FunctionVariantType) {
  const text = plainTextOf(criterion);
  return text === undefined ? undefined : places.rows(range, text);
}

/** Nothing where the engine has to compare every cell. */
function found(places: TextPlaces, given: Given): Found | undefined {
  let rows: readonly number[] | undefined;
  const rest: FunctionVariantType[] = [];
  for (const [range, criterion] of pairsOf(given) ?? []) {
    const known = rowsOf(places, range, criterion);
    if (known === undefined) rest.push(range as FunctionVariantType, criterion);
    else rows = rows === undefined ? known : rowsInBoth(rows, known);
  }
  return rows && { rows, rest };
}

/** Rows in which every range of a list of ranges and criteria holds its text; nothing where the engine has to compare. */
function rowsWith(places: TextPlaces, given: Given): readonly number[] | undefined {
  const all = found(places, given);
  return all?.rest.length === 0 ? all.rows : undefined;
}

/** The sum of some rows of a column; nothing where the engine has to add up. */
function sumOf(range: BaseReferenceObject, rows: readonly number[]): number | undefined {
  const { startColumn, endColumn } = range.getRangePosition();
  if (startColumn !== endColumn) return undefined;
  let sum: number | undefined = 0;
  for (const row of rows) {
    const value = addedBy(range.getCellData(row, startColumn) as EngineCell | undefined);
    if (value === undefined || sum === undefined) return undefined;
    sum = value === 0 ? sum : plus(sum, value);
  }
  return sum;
}

function sumBeside(
  places: TextPlaces,
  added: FunctionVariantType | undefined,
  given: Given,
): number | undefined {
  const [first] = given;
  if (!isRange(added) || !isRange(first) || !areBeside(added, first)) return undefined;
  const rows = rowsWith(places, given);
  return rows === undefined ? undefined : sumOf(added, rows);
}

const isSingle = (value: FunctionVariantType): boolean => {
  const list = value.isReferenceObject() ? (value as BaseReferenceObject).toArrayValueObject() : value;
  return !(list instanceof ArrayValueObject) || (list.getRowCount() === 1 && list.getColumnCount() === 1);
};

/** Some rows of a column in the place of the whole of it. */
function shortened(range: BaseReferenceObject, rows: readonly number[]): FunctionVariantType {
  const { startRow } = range.getRangePosition();
  const all = range.toArrayValueObject();
  const list = ArrayValueObject.create({
    calculateValueList: rows.map((row) => [all.get(row - startRow, 0) ?? null]),
    rowCount: rows.length,
    columnCount: 1,
    unitId: "",
    sheetId: "",
    row: 0,
    column: 0,
  });
  // As much of a range as the functions ask for that count.
  const some = {
    isReferenceObject: () => true,
    isArray: () => false,
    isError: () => false,
    getRowCount: () => rows.length,
    getColumnCount: () => 1,
    toArrayValueObject: () => list,
  };
  return some as unknown as FunctionVariantType;
}

/** Counts by texts, and where other criteria stand beside them only in the rows with these texts. */
function countAll(places: TextPlaces, given: Given, calculate: Calculate): FunctionVariantType | undefined {
  const known = found(places, given);
  if (known === undefined) return undefined;
  const { rows, rest } = known;
  if (rest.length === 0) return NumberValueObject.create(rows.length);
  if (!rest.every((value, at) => at % 2 === 0 || isSingle(value))) return undefined;
  if (rows.length === 0) return NumberValueObject.create(0);
  return calculate(
    ...rest.map((value, at) => (at % 2 === 0 && isRange(value) ? shortened(value, rows) : value)),
  );
}

/** Counts by a criterion that only the engine can read; once for all formulas that ask the same. */
function countOnce(
  places: TextPlaces,
  [range, criterion]: Given,
  calculate: Calculate,
): FunctionVariantType | undefined {
  if (!isRange(range) || criterion === undefined) return undefined;
  const count = () => {
    const counted = calculate(range as FunctionVariantType, criterion);
    return counted instanceof NumberValueObject ? counted.getValue() : undefined;
  };
  return numberOf(places.countOnce(range, criterion, count));
}

const numberOf = (value: number | undefined) =>
  value === undefined ? undefined : NumberValueObject.create(value);

type Quick = (places: TextPlaces, given: Given, calculate: Calculate) => FunctionVariantType | undefined;

/** What functions come to where texts decide; nothing where the engine has to be asked. */
const BY_TEXTS: Readonly<Record<string, Quick>> = {
  COUNTIF: (places, given, calculate) =>
    given.length === 2
      ? (numberOf(rowsWith(places, given)?.length) ?? countOnce(places, given, calculate))
      : undefined,
  COUNTIFS: (places, given, calculate) =>
    given.length % 2 === 0 ? countAll(places, given, calculate) : undefined,
  SUMIF: (places, [range, criterion, added]) => numberOf(sumBeside(places, added, [range, criterion])),
  SUMIFS: (places, [added, ...given]) =>
    given.length % 2 === 0 ? numberOf(sumBeside(places, added, given)) : undefined,
};

const isExact = (kind: FunctionVariantType | undefined) =>
  kind instanceof BaseValueObject && kind.isNumber() && kind.getValue() === 0;

const isLine = (list: FunctionVariantType | undefined): list is ArrayValueObject =>
  list instanceof ArrayValueObject && (list.getRowCount() === 1) !== (list.getColumnCount() === 1);

/** What is looked up by its place: a text that means itself, or a whole number. */
function wantedOf(value: FunctionVariantType | undefined): string | number | undefined {
  if (value instanceof StringValueObject) return comparedForm(value.getValue());
  return isPlainInteger(value) ? value.getValue() : undefined;
}

/** The place of one value; nothing where the engine has to compare. */
function matchOne(places: TextPlaces, wanted: FunctionVariantType | undefined, list: ArrayValueObject) {
  const form = wantedOf(wanted);
  const place = form === undefined ? undefined : places.placeIn(list, form);
  if (place === undefined) return undefined;
  return place < 0 ? ErrorValueObject.create(ErrorType.NA) : NumberValueObject.create(place + 1);
}

/** A cell that is named by its address is a list of one: the engine gives a list for it, and so does this. */
function match(places: TextPlaces, calculate: Calculate): Calculate {
  return (...values) => {
    const [wanted, list, kind] = values;
    if (!isLine(list) || !isExact(kind)) return calculate(...values);
    const one = (value: FunctionVariantType | undefined) => matchOne(places, value, list as ArrayValueObject);
    if (!(wanted instanceof ArrayValueObject)) return one(wanted) ?? calculate(...values);
    return wanted.map(
      (value) => (one(value) ?? calculate(value, list, kind as BaseValueObject)) as BaseValueObject,
    );
  };
}

/** Which arguments are ranges; the rest are criteria. */
const FIRST_AND_THIRD = (at: number) => at === 0 || at === 2;
const EVERY_OTHER = (at: number) => at % 2 === 0;
const FIRST_AND_EVERY_OTHER = (at: number) => at === 0 || at % 2 === 1;
const RANGES: Readonly<Record<string, (at: number) => boolean>> = {
  COUNTIF: EVERY_OTHER,
  COUNTIFS: EVERY_OTHER,
  SUMIF: FIRST_AND_THIRD,
  SUMIFS: FIRST_AND_EVERY_OTHER,
  AVERAGEIF: FIRST_AND_THIRD,
  AVERAGEIFS: FIRST_AND_EVERY_OTHER,
  MAXIFS: FIRST_AND_EVERY_OTHER,
  MINIFS: FIRST_AND_EVERY_OTHER,
};

/** Lets an engine's functions find texts by their place. @returns What is to forget them when cells become others. */
export function findTextsByPlace(functions: IFunctionService): TextPlaces {
  const places = new TextPlaces();
  const replace = (name: string, quick: (calculate: Calculate) => Calculate) => {
    const executor = functions.getExecutor(name as never);
    if (!executor) return;
    const calculate = executor.calculate.bind(executor) as unknown as Calculate;
    executor.calculate = quick(calculate) as typeof executor.calculate;
  };
  replace("MATCH", (calculate) => match(places, calculate));
  for (const [name, isOfRange] of Object.entries(RANGES))
    replace(name, (calculate) => (...values) => {
      // The error of a range that is none, such as one on a sheet that is gone, is the answer.
      const error = values.find((value, at) => isOfRange(at) && value?.isError());
      if (error !== undefined) return error;
      return BY_TEXTS[name]?.(places, values, calculate) ?? calculate(...values);
    });
  return places;
}
