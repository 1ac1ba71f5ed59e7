import { ArrayValueObject, ValueObjectFactory } from "@univerjs/engine-formula";
import { arrayRows } from "../formula/tokens";

function arrayConstant(text: string): ArrayValueObject {
  const rows = arrayRows(text).map((row) => row.map((cell) => ValueObjectFactory.create(cell, true)));
  return ArrayValueObject.create({
    calculateValueList: rows,
    rowCount: rows.length,
    columnCount: Math.max(...rows.map((row) => row.length)),
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}

let repaired = false;

/**
 * The engine cuts an array constant at every comma, also at one inside a text: `{"0,8";"1,2"}` would come out as
 * four pieces with stray quotes. Repaired for the whole engine, once.
 */
export function repairArrayConstants(): void {
  if (repaired) return;
  repaired = true;
  const create = ArrayValueObject.create.bind(ArrayValueObject);
  ArrayValueObject.create = (raw) =>
    typeof raw === "string" && raw.startsWith("{") && raw.includes('"') ? arrayConstant(raw) : create(raw);
}
