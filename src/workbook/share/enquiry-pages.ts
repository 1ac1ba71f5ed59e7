import type { CellData, SheetData } from "../model/workbook-data";
import { LINES_A_PAGE } from "../sheets/cut-list-sheet";
import { type Kept, wordsOf } from "./kept-rows";
import { ITEM } from "./letter-cells";
import { addressee, type Page, pagesOf, rowsOn, withPages } from "./paper-pages";

/** The row below the last line: names in front of where the two sign. */
const SIGNED = /^For the /;

/** A page of a letter in parts: what stands above its lines, each line that is asked about, and where two sign. */
interface Parts {
  readonly head: number[];
  readonly items: number[][];
  readonly foot: number[];
}

/** Where a row belongs that begins with a label, after the rows above it; nowhere for what is left out. */
function rowsFor(parts: Parts, label: string, above: number[] | undefined, lines: ReadonlySet<string>) {
  const line = ITEM.exec(label)?.[1];
  if (line !== undefined) {
    const item: number[] = [];
    if (lines.has(line)) parts.items.push(item);
    return item;
  }
  if (SIGNED.test(label)) return parts.foot;
  // Places of lines that are empty begin with nothing.
  const isOfLines = above !== parts.head && above !== parts.foot;
  return label === "" && isOfLines ? undefined : above;
}

/** Lines that nobody is asked about go, and so do places of lines that are empty. */
function partsOf(page: Page, lines: ReadonlySet<string>): Parts {
  const first = page.cells.filter(({ column }) => column === 0);
  const labels = new Map(first.map((cell) => [cell.row, wordsOf(cell)]));
  const parts: Parts = { head: [], items: [], foot: [] };
  let into: number[] | undefined = parts.head;
  for (const row of rowsOn(page)) {
    into = rowsFor(parts, labels.get(row) ?? "", into, lines);
    into?.push(row);
  }
  return parts;
}

/** Rows page by page: the lines of all pages follow each other, as many on a page as it has places for. */
function packed(pages: readonly Parts[]): number[][] {
  const items = pages.flatMap((page) => page.items);
  const count = Math.ceil(items.length / LINES_A_PAGE);
  return pages.slice(0, count).map(({ head, foot }, at) => {
    const own = items.slice(at * LINES_A_PAGE, (at + 1) * LINES_A_PAGE);
    return [...head, ...own.flat(), ...foot];
  });
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
  const pages = pagesOf(sheet).filter((page) => addressee(page.cells) !== "");
  const rows = packed(pages.map((page) => partsOf(page, named)));
  const cells = pages.flatMap((page, at) => addressed(page.cells, name, `${at + 1} of ${rows.length}`));
  return withPages({ ...sheet, cells }, rows);
}
