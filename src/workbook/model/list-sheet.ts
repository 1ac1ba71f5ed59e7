import { cellName, columnLetters } from "../../formula/addresses";
import type { CellData, OfferedWords, WorkbookData } from "./workbook-data";

/** Longest list that a cell's own rule may hold (ECMA-376 Part 1, 18.3.1.32, formula of a list in quotes). */
const LONGEST = 255;
const WANTED = "Lists";

/** Commas part the words of a rule, so that a word with one cannot stand in it. */
const isTooMuch = ({ words = [] }: OfferedWords) =>
  words.join(",").length > LONGEST || words.some((word) => /[,"]/.test(word));

function freeName(taken: readonly string[]): string {
  const known = new Set(taken.map((name) => name.toLowerCase()));
  let name = WANTED;
  for (let number = 2; known.has(name.toLowerCase()); number += 1) name = `${WANTED} ${number}`;
  return name;
}

/** Moves lists that a cell's own rule cannot hold to a hidden sheet, each into a column of its own. */
export function withListSheet(book: WorkbookData): WorkbookData {
  const name = freeName(book.sheets.map((sheet) => sheet.name));
  const quoted = name === WANTED ? name : `'${name}'`;
  const columns = new Map<string, number>();
  const cells: CellData[] = [];
  const moved = (offer: OfferedWords): OfferedWords => {
    if (!isTooMuch(offer)) return offer;
    const words = offer.words ?? [];
    const key = words.join("\n");
    const column = columns.get(key) ?? columns.size;
    if (!columns.has(key)) cells.push(...words.map((value, row) => ({ row, column, content: { value } })));
    columns.set(key, column);
    const letters = columnLetters(column);
    const last = cellName(words.length - 1, column).slice(letters.length);
    return { areas: offer.areas, range: `${quoted}!$${letters}$1:$${letters}$${last}` };
  };
  const sheets = book.sheets.map((sheet) => ({ ...sheet, offers: sheet.offers.map(moved) }));
  if (columns.size === 0) return book;
  const lists = {
    name,
    isHidden: true,
    cells,
    columns: new Map(),
    rows: new Map(),
    frozenRows: 0,
    frozenColumns: 0,
    merged: [],
    offers: [],
    colors: [],
  };
  return { ...book, sheets: [...sheets, lists] };
}
