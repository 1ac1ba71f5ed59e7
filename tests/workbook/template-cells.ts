import { Workbook, type Worksheet } from "@cj-tech-master/excelts";

type Shown = number | string | boolean | undefined;

/** Values of a workbook file, read by another library than ours. */
export interface StoredValues {
  at(sheet: string, cell: string): Shown;
  /** Row by row, from the top. */
  rows(sheet: string): readonly (readonly Shown[])[];
  /** The value below a heading, in the row whose first cell names it. */
  figure(sheet: string, line: string, heading: string): Shown;
}

function rowsOf(sheet: Worksheet): Shown[][] {
  return Array.from({ length: sheet.rowCount }, (_, row) =>
    Array.from({ length: sheet.columnCount }, (__, column) =>
      shown(sheet.getCell(row + 1, column + 1).value),
    ),
  );
}

/** Reads the values that a workbook file holds. */
export async function storedValues(bytes: Uint8Array): Promise<StoredValues> {
  const workbook = new Workbook();
  await workbook.xlsx.load(bytes);
  const read = new Map(workbook.worksheets.map((sheet) => [sheet.name, rowsOf(sheet)]));
  const rows = (sheet: string) => {
    const found = read.get(sheet);
    if (found === undefined) throw new RangeError(`no sheet ${sheet}`);
    return found;
  };
  return {
    at: (sheet, cell) => shown(workbook.getWorksheet(sheet)?.getCell(cell).value),
    rows,
    figure(sheet, line, heading) {
      const column = rows(sheet)
        .find((row) => row.includes(heading))
        ?.indexOf(heading);
      if (column === undefined) throw new RangeError(`${sheet}: no heading ${heading}`);
      return rows(sheet).find(([first]) => first === line)?.[column];
    },
  };
}

function shown(value: unknown): Shown {
  if (typeof value !== "object" || value === null) return value === null ? undefined : (value as Shown);
  if (value instanceof Date) return value.toISOString().slice(0, 10);
  if ("error" in value) return String(value.error);
  return "result" in value ? shown(value.result) : "";
}
