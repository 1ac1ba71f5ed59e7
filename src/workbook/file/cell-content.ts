import type { CellValue } from "../../engine/cell-value";

import type { StoredCell } from "./read/stored-sheet";
import { readXstring, writeXstring } from "./strings";

type Value = number | string | boolean;

/** Days from the start of the calendar of a workbook, as spreadsheets count them. */
function serialOf(date: string, from1904: boolean): number | undefined {
  const milliseconds = Date.parse(/Z$|[+-]\d\d:\d\d$/.test(date) || !date.includes("T") ? date : `${date}Z`);
  if (Number.isNaN(milliseconds)) return undefined;
  const day = milliseconds / 86_400_000 + 25_569;
  return from1904 ? day - 1462 : day;
}

function numberIn(raw: string): number | string {
  const number = Number(raw);
  return Number.isFinite(number) ? number : raw;
}

const READERS: Readonly<
  Record<string, (raw: string, strings: readonly string[], from1904: boolean) => Value>
> = {
  n: numberIn,
  s: (raw, strings) => strings[Number(raw)] ?? "",
  b: (raw) => raw === "1" || raw === "true",
  d: (raw, _, from1904) => serialOf(raw, from1904) ?? raw,
  str: readXstring,
  inlineStr: (raw) => raw,
};

/**
 * The content of a cell as the file holds it; `undefined` for an empty one.
 *
 * @param strings - Shared strings of the workbook.
 * @param from1904 - Whether dates count from 1904.
 */
export function contentOf(
  { raw, type }: StoredCell,
  strings: readonly string[],
  from1904: boolean,
): CellValue | undefined {
  const isText = type === "str" || type === "inlineStr";
  if (raw === undefined || (raw === "" && !isText)) return undefined;
  if (type === "e") return { error: raw };
  return { value: (READERS[type] ?? numberIn)(raw, strings, from1904) };
}

/** Errors a file may hold (ST_CellType `e`); newer ones are kept in it as `#VALUE!`, as Excel does. */
const FILE_ERRORS = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"]);

/** A result as content of a cell in a file. */
export function contentFrom(result: CellValue): CellValue {
  if (!("error" in result)) return { value: result.value };
  return { error: FILE_ERRORS.has(result.error) ? result.error : "#VALUE!" };
}

/** Spreadsheets show and compare 15 figures; what lies beyond is noise of the last bit. */
const figures = (value: number) => value.toPrecision(15);

/** True where two contents show the same. */
export function isSame(a: CellValue | undefined, b: CellValue | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  if ("error" in a || "error" in b) return "error" in a && "error" in b && a.error === b.error;
  if (typeof a.value === "number" && typeof b.value === "number")
    return figures(a.value) === figures(b.value);
  return a.value === b.value;
}

/** The `t` attribute and the text of `<v>` for a content that a formula gave; the text is not yet escaped. */
export function writtenForm(content: CellValue): {
  readonly type: string | undefined;
  readonly text: string;
} {
  if ("error" in content) return { type: "e", text: content.error };
  if (typeof content.value === "number") return { type: undefined, text: String(content.value) };
  if (typeof content.value === "boolean") return { type: "b", text: content.value ? "1" : "0" };
  return { type: "str", text: writeXstring(content.value) };
}
