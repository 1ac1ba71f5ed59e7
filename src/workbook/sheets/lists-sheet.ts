import { cellName } from "../../formula/addresses";
import type { SheetModel, WordList, WorkbookModel } from "../model/sheet-model";
import { fixedBlock, heading, helperSheet, note, type Row, title, worked } from "./parts/sheet-parts";

const HEADINGS = 2;
const FIRST = HEADINGS + 1;

/** Excel takes no longer list of words in a rule itself (ECMA-376 Part 1, 18.3.1.32: 255 characters). */
const LONGEST = 255;

/** A workbook with the words of its drop-downs, and where each list of words is found. */
export interface Listed {
  readonly workbook: WorkbookModel;
  /** The source of a drop-down as a file holds it. */
  sourceOf(list: WordList): string;
}

const keyOf = ({ words }: WordList) => words.join("\n");

/** Short words without commas may stand in the rule itself. */
function inRule({ words }: WordList): string | undefined {
  const text = words.join(",");
  const isPlain = words.every((word) => !/[,"]/.test(word)) && text.length <= LONGEST - 2;
  return isPlain ? `"${text}"` : undefined;
}

function headingOf(sheets: readonly SheetModel[], list: WordList): string {
  const sheet = sheets.find(({ wordLists }) => wordLists.includes(list));
  const first = (list.rows ?? sheet?.lines ?? [0])[0];
  const above = sheet?.rows.slice(0, first).map((row) => row[list.column]);
  const found = above?.filter((cell) => cell?.role === "heading").at(-1)?.content;
  return found === undefined ? "Words" : String(found);
}

function listsSheet(name: string, sheets: readonly SheetModel[], lists: readonly WordList[]): SheetModel {
  const longest = Math.max(...lists.map(({ words }) => words.length));
  const rows: Row[] = [
    [title("Lists: the words that drop-downs offer")],
    [note("Other words may be typed where a list is offered; a function says so if it does not know one.")],
    lists.map((list) => heading(headingOf(sheets, list))),
    ...Array.from({ length: longest }, (_, index) =>
      lists.map(({ words }) => {
        const word = words[index];
        return word === undefined ? undefined : worked(word);
      }),
    ),
  ];
  return helperSheet(name, rows, {
    columnWidths: lists.map(({ words }) => 40 + 6.5 * Math.max(...words.map((word) => word.length))),
    rowHeights: {},
    frozenRows: FIRST,
    print: { landscape: true, repeatedRows: [HEADINGS, HEADINGS] },
  });
}

function freeName(sheets: readonly SheetModel[]): string {
  const taken = new Set(sheets.map(({ name }) => name.toLowerCase()));
  let name = "Lists";
  for (let number = 2; taken.has(name.toLowerCase()); number += 1) name = `Lists ${number}`;
  return name;
}

/** Puts lists of words that are too long for a rule on a sheet of their own, each once. */
export function withLists(workbook: WorkbookModel): Listed {
  const all = workbook.sheets.flatMap(({ wordLists }) => wordLists).filter(({ words }) => words.length > 0);
  const long = new Map<string, WordList>();
  for (const list of all) {
    if (inRule(list) === undefined && !long.has(keyOf(list))) long.set(keyOf(list), list);
  }
  const name = freeName(workbook.sheets);
  const keys = [...long.keys()];
  const sourceOf = (list: WordList) =>
    inRule(list) ?? `'${name}'!${fixedBlock(FIRST, keys.indexOf(keyOf(list)), list.words.length)}`;
  if (keys.length === 0) return { workbook, sourceOf };
  const sheet = listsSheet(name, workbook.sheets, [...long.values()]);
  return { workbook: { ...workbook, sheets: [...workbook.sheets, sheet] }, sourceOf };
}

/** Address of the cells that offer a list of words. */
export function listArea({ column, rows }: WordList, lines: readonly [number, number]): string {
  const [first, last] = rows ?? lines;
  return `${cellName(first, column)}:${cellName(last, column)}`;
}
