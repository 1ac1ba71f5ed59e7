import { ArrayValueObject, ValueObjectFactory } from "@univerjs/engine-formula";

/** Parts of a text between separators; a separator inside double quotes separates nothing. */
function parts(text: string, separator: string): string[] {
  const found = [""];
  let quoted = false;
  for (const letter of text) {
    if (letter === '"') quoted = !quoted;
    if (letter === separator && !quoted) found.push("");
    else found[found.length - 1] += letter;
  }
  return found;
}

function arrayConstant(text: string): ArrayValueObject {
  const rows = parts(text.slice(1, -1), ";").map((row) =>
    parts(row, ",").map((cell) => ValueObjectFactory.create(cell.trim(), true)),
  );
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
