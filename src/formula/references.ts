import { columnLetters, type Rectangle, readCellName, readRectangle, rectangleName } from "./addresses";
import { HIDDEN, maskOf, replaceOutsideTexts } from "./mask";

const LAST_ROW = 1_048_575;
const LAST_COLUMN = 16_383;
const BEFORE = "(?<![\\w.$\\\\])";
const AFTER = "(?![\\w.(!\\\\])";
const CELL = new RegExp(`${BEFORE}(\\$?)([A-Z]{1,3})(\\$?)([1-9]\\d{0,6})${AFTER}`, "gi");
const COLUMNS = new RegExp(`${BEFORE}(\\$?)([A-Z]{1,3}):(\\$?)([A-Z]{1,3})${AFTER}`, "gi");
const ROWS = new RegExp(`${BEFORE}(\\$?)([1-9]\\d{0,6}):(\\$?)([1-9]\\d{0,6})${AFTER}`, "g");

/** A relative row or column that leaves the sheet comes in again at the other side, as in Excel. */
const moved = (place: number, fixed: string | undefined, by: number, last: number) =>
  fixed ? place : (((place + by) % (last + 1)) + last + 1) % (last + 1);

const columnOf = (letters: string | undefined) => readCellName(`${letters}1`)?.column ?? 0;

/**
 * The formula of a cell that shares it with another: references that are not fixed move along.
 *
 * @param rows - How far the cell stands below the one the formula is written for; negative for above.
 * @param columns - How far it stands to the right.
 */
export function shifted(formula: string, rows: number, columns: number): string {
  const column = (letters: string | undefined, fixed: string | undefined) =>
    `${fixed}${columnLetters(moved(columnOf(letters), fixed, columns, LAST_COLUMN))}`;
  const row = (digits: string | undefined, fixed: string | undefined) =>
    `${fixed}${moved(Number(digits) - 1, fixed, rows, LAST_ROW) + 1}`;
  const cells = replaceOutsideTexts(
    formula,
    CELL,
    ([, fixedColumn, letters, fixedRow, digits]) => column(letters, fixedColumn) + row(digits, fixedRow),
  );
  const columnsMoved = replaceOutsideTexts(
    cells,
    COLUMNS,
    ([, fixed, first, fixedLast, last]) => `${column(first, fixed)}:${column(last, fixedLast)}`,
  );
  return replaceOutsideTexts(
    columnsMoved,
    ROWS,
    ([, fixed, first, fixedLast, last]) => `${row(first, fixed)}:${row(last, fixedLast)}`,
  );
}

/** Cells on a sheet. */
export interface SheetArea {
  readonly sheet: string;
  readonly area: Rectangle;
}

const sheetNamed = (written: string) =>
  written.startsWith("'") ? written.slice(1, -1).replaceAll("''", "'") : written;

const SHEET = `(?:(${HIDDEN}+|[\\p{L}_][\\p{L}\\p{N}_.]*)!)?`;
const REFERENCE = new RegExp(
  `${SHEET}${BEFORE}(\\$?[A-Z]{1,3}\\$?[1-9]\\d{0,6})(?::(\\$?[A-Z]{1,3}\\$?[1-9]\\d{0,6}))?${AFTER}`,
  "giu",
);

/** The cells and ranges that a formula names by address. Whole rows, whole columns, names and tables are left out. */
export function referencesIn(formula: string, sheet: string): SheetArea[] {
  return [...maskOf(formula).matchAll(REFERENCE)].flatMap((match): SheetArea[] => {
    const written = formula.slice(match.index, match.index + (match[1]?.length ?? 0));
    const cells = formula.slice(
      match.index + (match[1] === undefined ? 0 : written.length + 1),
      match.index + match[0].length,
    );
    const area = readRectangle(cells.replaceAll("$", ""));
    return area === undefined ? [] : [{ sheet: match[1] === undefined ? sheet : sheetNamed(written), area }];
  });
}

const SPILLED = /(?:_xlfn\.)?ANCHORARRAY\(([^()]*)\)/gi;

/**
 * Replaces every `ANCHORARRAY(X)`, the file's form of `X#`, by the cells that X fills now.
 *
 * @param filled - Cells filled by the formula of a cell; `undefined` where it fills none but its own.
 */
export function withSpillsNamed(
  formula: string,
  sheet: string,
  filled: (anchor: SheetArea) => Rectangle | undefined,
): string {
  return replaceOutsideTexts(formula, SPILLED, ([, inside = ""], original) => {
    const written = original.slice(original.indexOf("(") + 1, -1);
    const [anchor] = referencesIn(written, sheet);
    const area = anchor && filled(anchor);
    if (area === undefined || inside === "") return written;
    const mark = written.lastIndexOf("!") + 1;
    return written.slice(0, mark) + rectangleName(area);
  });
}
