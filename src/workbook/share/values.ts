import type { CellValue } from "../../engine/cell-value";
import { cellName, placeOf, readCellName } from "../../formula/addresses";
import { answerTables, gridOf, toldCells } from "../answers/answer-tables";
import { contentOf } from "../file/cell-content";
import type { LiveWorkbook } from "../file/read/live-workbook";
import type { SheetData } from "../model/workbook-data";

/** Filled cells of a workbook by sheet and address; an empty text counts as no content. */
export type Values = ReadonlyMap<string, ReadonlyMap<string, CellValue>>;

/** All values of a workbook, formulas by the value the file holds for them. */
export function valuesOf(live: LiveWorkbook): Values {
  return new Map(
    live.sheets.map(({ listed, stored }) => {
      const cells = stored.rows.flatMap((row) =>
        row.cells.flatMap((cell) => {
          const content = contentOf(cell, live.strings, live.main.from1904);
          const isEmpty = content === undefined || ("value" in content && content.value === "");
          return isEmpty ? [] : [[cellName(cell.row, cell.column), content] as const];
        }),
      );
      return [listed.name, new Map(cells)];
    }),
  );
}

/**
 * Figures of a number that count. A copy is written with no more of them, so that a program which saves it again may
 * err in the last bit or print 15 figures, and its number still rounds to these: no tie lies near.
 */
const FIGURES = 12;

/** A number with the figures that count. */
export const withFigures = (value: number): number => Number(value.toPrecision(FIGURES));

/** A content in words that do not depend on the program that wrote the file. */
export function plainContent(content: CellValue | undefined): string {
  if (content === undefined) return "";
  if ("error" in content) return content.error;
  const { value } = content;
  if (typeof value === "number") return String(withFigures(value));
  return typeof value === "boolean" ? String(value).toUpperCase() : value;
}

/** The values of sheets of constants. */
export function valuesOfSheets(sheets: readonly SheetData[]): Values {
  return new Map(
    sheets.map(({ name, cells }) => {
      const filled = cells.flatMap(({ row, column, content }) =>
        content === undefined || "formula" in content ? [] : [[cellName(row, column), content] as const],
      );
      return [name, new Map(filled)];
    }),
  );
}

function kindOf(content: CellValue): string {
  return "error" in content ? "error" : typeof content.value;
}

/** What a sheet of answers tells, piece by piece; `undefined` for any other sheet. */
function toldOf(cells: ReadonlyMap<string, CellValue>): string[][] | undefined {
  const found = answerTables(gridOf(cells));
  if (found.length === 0) return undefined;
  return toldCells(found).map(([key, heading, content]) => [
    key,
    heading,
    content === undefined ? "" : kindOf(content),
    plainContent(content),
  ]);
}

function placeIn(cell: string): number {
  const place = readCellName(cell);
  return place === undefined ? -1 : placeOf(place.row, place.column);
}

/**
 * SHA-256 over all values of a workbook, in hexadecimal digits. Sheets count in the order of their names, cells in the
 * order of their places, numbers by 12 figures; of a table of answers, what it tells counts in the order of its keys,
 * wherever it stands, and the answers do not. Saving the file in another program changes nothing, changing a value
 * does.
 *
 * @param isLeftOut - Cells that do not count, such as the one that holds the digest.
 */
export async function digestOf(
  values: Values,
  isLeftOut: (sheet: string, cell: string) => boolean = () => false,
): Promise<string> {
  const sheets = [...values].sort(([a], [b]) => (a < b ? -1 : 1));
  const lines = sheets.flatMap(([sheet, cells]) =>
    toldOf(cells) === undefined
      ? [...cells]
          .filter(([cell]) => !isLeftOut(sheet, cell))
          .sort(([a], [b]) => placeIn(a) - placeIn(b))
          .map(([cell, content]) => JSON.stringify([sheet, cell, kindOf(content), plainContent(content)]))
      : [],
  );
  const told = sheets.flatMap(([, cells]) => toldOf(cells) ?? []).map((told) => JSON.stringify(told));
  lines.push(...told.sort());
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(lines.join("\n")));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
