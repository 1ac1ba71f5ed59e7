import type { Nullable } from "@univerjs/core";
import {
  ArrayValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  BooleanValueObject,
  ErrorValueObject,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/engine-formula";
import { Refusal } from "../core/refusal";
import type { Cell, Cells } from "../functions/cells";
import { errorArgument, refusedValue } from "./refused-value";

/** One value of the engine as the worksheet functions read it; `null` for an empty cell or a gap between commas. */
function plain(value: Nullable<BaseValueObject>): unknown {
  if (!value || value.isNull()) return null;
  if (value instanceof ErrorValueObject) return errorArgument(value);
  if (value.isLambda()) return { type: "Error", basicValue: "#VALUE!" };
  return value.getValue();
}

/** One argument as the engine hands it over: a single value, or rows for a range or an array. */
export function argumentFrom(variant: BaseValueObject | BaseReferenceObject): unknown {
  if (variant.isReferenceObject()) return argumentFrom((variant as BaseReferenceObject).toArrayValueObject());
  if (!(variant instanceof ArrayValueObject)) return plain(variant as BaseValueObject);
  const rows = Array.from({ length: variant.getRowCount() }, (_, row) => row);
  const columns = Array.from({ length: variant.getColumnCount() }, (_, column) => column);
  return rows.map((row) => columns.map((column) => plain(variant.get(row, column))));
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
