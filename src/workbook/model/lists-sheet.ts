import { cellName } from "../../formula/addresses";
import { freeSheetName } from "../../formula/sheet-names";
import { styleOfRole } from "./role-styles";
import type { CellData, OfferedWords, Paper, SheetData, WorkbookData } from "./workbook-data";

/** Excel takes no longer list of words in a rule itself (ECMA-376 Part 1, 18.3.1.32: 255 characters with quotes). */
const LONGEST = 253;
const WANTED = "Lists";
const HEADINGS = 2;
const FIRST = HEADINGS + 1;
const TITLE = "Lists: the words that drop-downs offer";
const NOTE = "Other words may be typed where a list is offered; a function says so if it does not know one.";

const HEADING = styleOfRole({ role: "heading", wrap: true });
const WORD = styleOfRole({ role: "worked" });

/** Commas part the words of a rule, so that a word with one cannot stand in it. */
const isTooMuch = ({ words = [] }: OfferedWords) =>
  words.join(",").length > LONGEST || words.some((word) => /[,"]/.test(word));

/** The heading that stands above the cells which offer a list. */
function headingOf({ cells }: SheetData, { areas }: OfferedWords): string {
  const [area] = areas;
  const above = cells.filter(({ row, column, style }) => {
    const isAbove = area !== undefined && column === area.column && row < area.row;
    return isAbove && style?.bold === true && style.fill === HEADING.fill;
  });
  const content = above.sort((a, b) => a.row - b.row).at(-1)?.content;
  return content !== undefined && "value" in content ? String(content.value) : "Words";
}

/** A list that found no room in its rule, with its heading. */
interface MovedList {
  readonly heading: string;
  readonly words: readonly string[];
}

const keyOf = (words: readonly string[] = []) => words.join("\n");

function movedLists({ sheets }: WorkbookData): MovedList[] {
  const moved = new Map<string, MovedList>();
  for (const sheet of sheets) {
    for (const offer of sheet.offers.filter(isTooMuch)) {
      const key = keyOf(offer.words);
      if (!moved.has(key)) moved.set(key, { heading: headingOf(sheet, offer), words: offer.words ?? [] });
    }
  }
  return [...moved.values()];
}

function listCells({ heading, words }: MovedList, column: number): CellData[] {
  const values = words.map(
    (value, index): CellData => ({
      row: FIRST + index,
      column,
      content: { value },
      style: WORD,
    }),
  );
  return [{ row: HEADINGS, column, content: { value: heading }, style: HEADING }, ...values];
}

/** Pixels that the longest word of a list needs. */
const widthOf = ({ words }: MovedList) => 40 + 6.5 * Math.max(...words.map(({ length }) => length));

function listsSheet(name: string, lists: readonly MovedList[], paper: Paper = "A4"): SheetData {
  return {
    name,
    isHidden: false,
    cells: [
      { row: 0, column: 0, content: { value: TITLE }, style: styleOfRole({ role: "title" }) },
      { row: 1, column: 0, content: { value: NOTE }, style: styleOfRole({ role: "note" }) },
      ...lists.flatMap(listCells),
    ],
    columns: new Map(lists.map((list, column) => [column, { size: widthOf(list) }])),
    rows: new Map(),
    frozenRows: FIRST,
    frozenColumns: 0,
    merged: [],
    offers: [],
    colors: [],
    hidesGridLines: true,
    print: { landscape: true, paper, repeatedRows: [HEADINGS, HEADINGS] },
  };
}

function rangeOf(name: string, column: number, count: number): string {
  const last = cellName(FIRST + count - 1, column, "both");
  return `'${name}'!${cellName(FIRST, column, "both")}:${last}`;
}

/** Moves lists that a cell's own rule cannot hold to a sheet of their own, each once, in a column of its own. */
export function withListsSheet(workbook: WorkbookData): WorkbookData {
  const lists = movedLists(workbook);
  if (lists.length === 0) return workbook;
  const name = freeSheetName(
    WANTED,
    workbook.sheets.map((sheet) => sheet.name),
  );
  const columns = new Map(lists.map(({ words }, column) => [keyOf(words), column]));
  const moved = (offer: OfferedWords): OfferedWords => {
    if (!isTooMuch(offer)) return offer;
    const column = columns.get(keyOf(offer.words)) ?? 0;
    return { areas: offer.areas, range: rangeOf(name, column, offer.words?.length ?? 0) };
  };
  const sheets = workbook.sheets.map((sheet) => ({ ...sheet, offers: sheet.offers.map(moved) }));
  return { ...workbook, sheets: [...sheets, listsSheet(name, lists, workbook.sheets[0]?.print?.paper)] };
}
