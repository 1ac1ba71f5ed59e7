import { CellValueType } from "@univerjs/core";
import {
  type BaseReferenceObject,
  type BaseValueObject,
  ERROR_TYPE_SET,
  type ErrorType,
  type FunctionVariantType,
  type IFunctionService,
  NumberValueObject,
} from "@univerjs/engine-formula";
import type { EngineCell } from "./formula";

/**
 * Sums of columns, as far as each was read. A balance down a column adds up from its first row in every row: read anew
 * each time, that grows with the square of the rows and fills memory with lists. Only cells of which the engine would
 * add the very number, or nothing, are added here, one by one by its own addition; anything else is left to it.
 */
type Calculate = (...values: FunctionVariantType[]) => FunctionVariantType;

/** Shorter columns are as quickly added up by the engine. */
const MIN_CELLS = 12;

/** What a cell adds to a sum; nothing where only the engine knows. */
export function addedBy(cell: EngineCell | undefined | null): number | undefined {
  const { v, t, s } = cell ?? {};
  if (v === undefined || v === null) return 0;
  if (t === CellValueType.STRING) return ERROR_TYPE_SET.has(v as ErrorType) ? undefined : 0;
  if (t === CellValueType.BOOLEAN) return 0;
  // A number with a format of its own may be a text, and hands its format on.
  return t === CellValueType.NUMBER && typeof v === "number" && s === undefined ? v : undefined;
}

/** The sums of a column from one row on, by the row they end in. */
class ColumnSums {
  private readonly sums: number[] = [];
  /** False once a cell was met of which only the engine knows what it adds. */
  private isSure = true;

  constructor(private readonly first: number) {}

  /** The sum down to a row; nothing where the engine has to add up. */
  to(last: number, cellAt: (row: number) => EngineCell | undefined): number | undefined {
    for (let row = this.first + this.sums.length; this.isSure && row <= last; row += 1) this.add(cellAt(row));
    return this.sums[last - this.first];
  }

  private add(cell: EngineCell | undefined): void {
    const value = addedBy(cell);
    const before = this.sums.at(-1) ?? 0;
    const sum = value === undefined ? undefined : value === 0 ? before : plus(before, value);
    if (sum === undefined) this.isSure = false;
    else this.sums.push(sum);
  }
}

/** The sum as the engine adds: decimal figures as decimals. Nothing where it gives no number. */
export function plus(sum: number, value: number): number | undefined {
  const added = NumberValueObject.create(sum).plusBy(value) as BaseValueObject;
  return added.isNumber() ? Number(added.getValue()) : undefined;
}

/** The columns that were added up since cells last became others. */
export class RunningSums {
  private columns = new Map<string, ColumnSums>();

  /** @param functions - Of an engine; its SUM finds the sums of columns here from now on. */
  constructor(functions: IFunctionService) {
    const executor = functions.getExecutor("SUM" as never);
    if (!executor) return;
    const calculate = executor.calculate.bind(executor) as unknown as Calculate;
    executor.needsReferenceObject = true;
    executor.calculate = ((...values: FunctionVariantType[]) =>
      calculate(...values.map((value) => this.summed(value)))) as typeof executor.calculate;
  }

  forget(): void {
    this.columns = new Map();
  }

  /** The sum in place of a column; any other range as the list of its cells. */
  private summed(value: FunctionVariantType): FunctionVariantType {
    if (!value.isReferenceObject()) return value;
    const range = value as BaseReferenceObject;
    const sum = this.sumOf(range);
    return sum === undefined ? range.toArrayValueObject() : NumberValueObject.create(sum);
  }

  private sumOf(range: BaseReferenceObject): number | undefined {
    const { startRow, endRow, startColumn, endColumn } = range.getRangePosition();
    if (startColumn !== endColumn || startRow < 0 || !(endRow - startRow + 1 >= MIN_CELLS)) return undefined;
    const key = `${range.getSheetId()} ${startColumn} ${startRow}`;
    const known = this.columns.get(key);
    const column = known ?? new ColumnSums(startRow);
    if (known === undefined) this.columns.set(key, column);
    return column.to(endRow, (row) => range.getCellData(row, startColumn) as EngineCell | undefined);
  }
}
