import type { CellData, SheetData } from "../model/workbook-data";
import { type Kept, wordsOf } from "./kept-rows";
import { ITEM } from "./letter-cells";
import { addressee, cellsOn, pagesOf, rowsOn, withPages } from "./paper-pages";

/** The row below the last line: names in front of where the two sign. */
const SIGNED = /^For the /;

/** Rows of a page without those of lines that nobody is asked about; none where no line is left. */
function rowsLeft(sheet: SheetData, page: readonly [number, number], lines: ReadonlySet<string>): number[] {
  const labels = new Map(
    cellsOn(sheet, page).flatMap((cell) => (cell.column === 0 ? [[cell.row, wordsOf(cell)] as const] : [])),
  );
  let [isDropped, asked] = [false, 0];
  const rows = rowsOn(page).filter((row) => {
    const label = labels.get(row) ?? "";
    const line = ITEM.exec(label)?.[1];
    if (line !== undefined) {
      isDropped = !lines.has(line);
      asked += isDropped ? 0 : 1;
    } else if (label === "" || SIGNED.test(label)) isDropped = false;
    return !isDropped;
  });
  return asked === 0 ? [] : rows;
}

/** A page addressed to somebody else becomes one of this enquiry. */
function addressed(cells: readonly CellData[], name: string, number: string): CellData[] {
  const before = addressee(cells);
  const page = cells.find((cell) => wordsOf(cell) === "Page");
  return cells.map((cell) => {
    const isNumber = page !== undefined && cell.row === page.row && cell.column === page.column + 1;
    if (isNumber) return { ...cell, content: { value: number } };
    return wordsOf(cell) === before ? { ...cell, content: { value: name } } : cell;
  });
}

/**
 * The pages of the enquiry with the lines that somebody is asked about, all addressed to that one, whoever the plan
 * buys them from.
 *
 * @param lines - As the plan names what it asks about: line and steel, `L1/S1`.
 */
export function enquiryPages(
  sheet: SheetData,
  name: string,
  lines: ReadonlySet<string>,
): readonly [SheetData, Kept] {
  const named = new Set([...lines].map((line) => line.split("/")[0] ?? ""));
  const pages = pagesOf(sheet)
    .filter((page) => addressee(cellsOn(sheet, page)) !== "")
    .map((page) => ({ page, rows: rowsLeft(sheet, page, named) }))
    .filter(({ rows }) => rows.length > 0);
  const cells = pages.flatMap(({ page }, at) =>
    addressed(cellsOn(sheet, page), name, `${at + 1} of ${pages.length}`),
  );
  return withPages(
    { ...sheet, cells },
    pages.map(({ rows }) => rows),
  );
}
