import type { CellData, SheetData } from "../model/workbook-data";

/** The rows of a sheet that travel, each with the row that it becomes. */
export type Kept = ReadonlyMap<number, number>;

export const numbered = (rows: readonly number[]): Kept => new Map(rows.map((row, at) => [row, at]));

/** The constant of a cell as text. */
export const wordsOf = ({ content }: CellData): string =>
  content === undefined || "formula" in content || "error" in content ? "" : String(content.value);

/** Closes up the rows that are kept; notes go, since their formulas name the old rows. */
export function withRows(sheet: SheetData, kept: Kept): SheetData {
  const cells = sheet.cells.flatMap(({ note: _, ...cell }): CellData[] => {
    const row = kept.get(cell.row);
    return row === undefined ? [] : [{ ...cell, row }];
  });
  const rows = new Map(
    [...sheet.rows].flatMap(([row, band]) => {
      const to = kept.get(row);
      return to === undefined ? [] : [[to, band] as const];
    }),
  );
  const merged = sheet.merged.flatMap((area) => {
    const [row, lastRow] = [kept.get(area.row), kept.get(area.lastRow)];
    return row === undefined || lastRow === undefined ? [] : [{ ...area, row, lastRow }];
  });
  return { ...sheet, cells, rows, merged };
}
