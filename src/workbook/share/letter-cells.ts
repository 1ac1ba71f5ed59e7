import { ANSWER_BY } from "../answers/forms";
import { styleOfRole } from "../model/role-styles";
import type { CellData, SheetData } from "../model/workbook-data";
import { wordsOf } from "./kept-rows";

/** How the row begins in which a line of a letter starts. */
export const ITEM = /^Item (.+)$/;

/** A letter names the day by which an answer is wanted, where the sender gave one. */
export function withAnswerBy(sheet: SheetData, by: string): SheetData {
  if (by === "") return sheet;
  const asked = new Set(
    sheet.cells
      .filter((cell) => wordsOf(cell) === ANSWER_BY)
      .map(({ row, column }) => `${row} ${column + 1}`),
  );
  const cells = sheet.cells.map((cell) =>
    asked.has(`${cell.row} ${cell.column}`) ? { ...cell, content: { value: by } } : cell,
  );
  return { ...sheet, cells };
}

const NAME = styleOfRole({ role: "heading", wrap: true, isInFront: true });
const POINT = styleOfRole({ role: "words", wrap: true });

/**
 * In the workbook the points of a line stand without boxes, since a place for a line may stay empty. In a copy what
 * is empty is known: points that say something get the boxes that all others have.
 */
export function withItemBoxes(sheet: SheetData): SheetData {
  const named = sheet.cells.filter(({ column }) => column === 0).sort((a, b) => a.row - b.row);
  const below = new Set<number>();
  let isItem = false;
  for (const cell of named) {
    const words = wordsOf(cell);
    if (ITEM.test(words)) isItem = true;
    else if (words === "" || cell.style?.edges?.left !== undefined) isItem = false;
    else if (isItem) below.add(cell.row);
  }
  const boxed = (cell: CellData): CellData =>
    below.has(cell.row) ? { ...cell, style: cell.column % 2 === 0 ? NAME : POINT } : cell;
  return { ...sheet, cells: sheet.cells.map(boxed) };
}
