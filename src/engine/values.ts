import type { Nullable } from "@univerjs/core";
import {
  ArrayValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/engine-formula";
import { Refusal } from "../core/refusal";
import type { Cell, Cells } from "../functions/cells";
import type { CellValue } from "./cell-value";
import { carriedSentence, errorArgument, refusedValue } from "./refused-value";

/** One value of the engine as the worksheet functions read it; `null` for an empty cell or a gap between commas. */
function plain(value: Nullable<BaseValueObject>): unknown {
  if (!value || value.isNull()) return null;
  if (value instanceof ErrorValueObject) return errorArgument(value);
  if (value.isLambda()) return { type: "Error", basicValue: "#VALUE!" };
  return value.getValue();
}

type Variant = BaseValueObject | BaseReferenceObject;

/** The rows of a range or an array, read cell by cell; `undefined` for a single value. */
export function rowsOf<T>(
  variant: Variant,
  read: (value: Nullable<BaseValueObject>) => T,
): T[][] | undefined {
  if (variant.isReferenceObject()) {
    return rowsOf((variant as BaseReferenceObject).toArrayValueObject(), read);
  }
  if (!(variant instanceof ArrayValueObject)) return undefined;
  const columns = Array.from({ length: variant.getColumnCount() }, (_, column) => column);
  return Array.from({ length: variant.getRowCount() }, (_, row) =>
    columns.map((column) => read(variant.get(row, column))),
  );
}

/** Rows of lists that formulas share: one range is handed to many of them as the same list. */
const known = new WeakMap<ArrayValueObject, unknown[][]>();

/** One argument as the engine hands it over: a single value, or rows for a range or an array. */
export function argumentFrom(variant: Variant): unknown {
  const list = variant.isReferenceObject() ? (variant as BaseReferenceObject).toArrayValueObject() : variant;
  if (!(list instanceof ArrayValueObject)) return plain(list as BaseValueObject);
  const rows = known.get(list) ?? (rowsOf(list, plain) as unknown[][]);
  known.set(list, rows);
  return rows;
}

/** What a cell shows for a value of the engine; an empty one shows 0, as in any spreadsheet. */
function cellResult(value: Nullable<BaseValueObject>): CellValue {
  if (!value || value.isNull()) return { value: 0 };
  if (value instanceof ErrorValueObject) {
    return { error: value.getErrorType(), message: carriedSentence(value.getCustomData()) };
  }
  if (value.isLambda()) return { error: ErrorType.CALC, message: undefined };
  return { value: value.getValue() };
}

/** The cells a value fills, in full precision. */
export function cellResults(variant: Variant): CellValue[][] {
  return rowsOf(variant, cellResult) ?? [[cellResult(variant as BaseValueObject)]];
}

function valueFrom(cell: Cell): BaseValueObject {
  if (cell instanceof Refusal) return refusedValue(cell);
  if (typeof cell === "number") return NumberValueObject.create(cell);
  if (typeof cell === "boolean") return BooleanValueObject.create(cell);
  return StringValueObject.create(cell ?? "");
}

/** A result as the engine takes it: a rectangle spills, a single cell stays a single value. */
export function resultFrom(cells: Cells): BaseValueObject {
  const first = cells[0]?.[0];
  const columnCount = cells[0]?.length ?? 0;
  if (first !== undefined && cells.length === 1 && columnCount === 1) return valueFrom(first);
  return ArrayValueObject.create({
    calculateValueList: cells.map((row) => row.map(valueFrom)),
    rowCount: cells.length,
    columnCount,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}
