import type { CellData, SheetData } from "../../../src/workbook/model/workbook-data";

/** A sheet from rows of words and figures; an empty text is no cell. */
export function paper(
  name: string,
  rows: readonly (readonly (string | number)[])[],
  more: Partial<SheetData> = {},
): SheetData {
  const cells = rows.flatMap((row, at) =>
    row.flatMap((value, column): CellData[] =>
      value === "" ? [] : [{ row: at, column, content: { value } }],
    ),
  );
  return {
    name,
    isHidden: false,
    columns: new Map(),
    rows: new Map(),
    cells,
    frozenRows: 0,
    frozenColumns: 0,
    merged: [],
    offers: [],
    colors: [],
    print: { landscape: false },
    ...more,
  };
}

/** What a sheet shows, row by row, rows without a cell included. */
export function shownIn({ cells }: SheetData): (string | number)[][] {
  const last = cells.reduce((most, { row }) => Math.max(most, row), -1);
  return Array.from({ length: last + 1 }, (_, at) =>
    cells
      .filter(({ row, content }) => row === at && content !== undefined)
      .sort((a, b) => a.column - b.column)
      .map(({ content }) =>
        content !== undefined && "value" in content ? (content.value as string | number) : "",
      ),
  );
}
