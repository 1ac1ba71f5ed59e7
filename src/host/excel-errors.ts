/** Codes by the kind of error that newer versions tell (ExcelApi 1.16); `values` may have them in the reader's language. */
const CODES: Readonly<Partial<Record<string, string>>> = {
  Busy: "#BUSY!",
  Calc: "#CALC!",
  Connect: "#CONNECT!",
  Div0: "#DIV/0!",
  Field: "#FIELD!",
  Name: "#NAME?",
  NotAvailable: "#N/A",
  Null: "#NULL!",
  Num: "#NUM!",
  Ref: "#REF!",
  Spill: "#SPILL!",
  Value: "#VALUE!",
};

/** What a range has to be asked for, besides its formulas, to know the errors in it. */
export const OF_ERRORS = ["values", "valueTypes"] as const;

/** A range whose errors are asked for. */
type Read = Pick<Excel.Range, "values" | "valueTypes"> & Partial<Pick<Excel.Range, "valuesAsJson">>;

/**
 * The English code of the error in a cell of a range that was loaded; empty where it holds none.
 *
 * @param hasKinds - True where `valuesAsJson` was loaded too. Without it the code is as `values` has it.
 */
export function errorIn(range: Read, row: number, column: number, hasKinds: boolean): string {
  if (range.valueTypes[row]?.[column] !== "Error") return "";
  const value = hasKinds ? range.valuesAsJson?.[row]?.[column] : undefined;
  const kind = value !== undefined && "errorType" in value ? String(value.errorType) : "";
  return CODES[kind] ?? String(range.values[row]?.[column] ?? "");
}

const OTHERS = new Set(Object.values(CODES).filter((code) => code !== "#NAME?"));

/**
 * True where an error may say that a name is not known: an older version tells it only in its own language, and every
 * code that is none of the others may be this one.
 */
export function mayBeUnknownName(code: string): boolean {
  return code !== "" && !OTHERS.has(code);
}
