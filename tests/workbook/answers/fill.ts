import { type Cell, Workbook, type Worksheet } from "@cj-tech-master/excelts";

type Given = number | string;

/** Answers by the words of the line (`L4/S4`) and the heading. */
export type Answers = Readonly<Record<string, Readonly<Record<string, Given>>>>;

const HEADINGS = 4;

function columnsOf(sheet: Worksheet): Map<string, number> {
  return new Map(
    Array.from({ length: sheet.columnCount }, (_, at) => [
      String(sheet.getCell(HEADINGS, at + 1).value ?? ""),
      at + 1,
    ]),
  );
}

/** Whatever else is done to a copy by whoever answers. */
export type Handling = (workbook: Workbook) => void;

/** Sorts the rows of a table the other way round, as a spreadsheet does it by hand. */
export const sorted =
  (name: string): Handling =>
  (workbook) => {
    const sheet = workbook.getWorksheet(name);
    if (sheet === undefined) return;
    const rows = Array.from({ length: sheet.rowCount - HEADINGS }, (_, at) =>
      Array.from(
        { length: sheet.columnCount },
        (__, column) => sheet.getCell(HEADINGS + 1 + at, column + 1).value,
      ),
    ).reverse();
    rows.forEach((row, at) => {
      row.forEach((value, column) => {
        sheet.getCell(HEADINGS + 1 + at, column + 1).value = value;
      });
    });
  };

/** Puts two columns in front of a table. */
export const widened =
  (name: string): Handling =>
  (workbook) => {
    const sheet = workbook.getWorksheet(name);
    if (sheet === undefined) return;
    for (const label of ["Answered by", "Date", "Asked of"])
      sheet.unMergeCells(headCell(sheet, label).address);
    const rows = Array.from({ length: sheet.rowCount }, (_, row) =>
      Array.from({ length: sheet.columnCount }, (__, column) => sheet.getCell(row + 1, column + 1).value),
    );
    rows.forEach((row, at) => {
      [null, at < HEADINGS - 1 ? null : "ours", ...row].forEach((value, column) => {
        sheet.getCell(at + 1, column + 1).value = value;
      });
    });
  };

export const renamed =
  (name: string, to: string): Handling =>
  (workbook) => {
    const sheet = workbook.getWorksheet(name);
    if (sheet !== undefined) sheet.name = to;
  };

/** The cell beside a label of the head. */
function headCell(sheet: Worksheet, label: string): Cell {
  for (let column = 1; column <= sheet.columnCount; column += 1)
    if (sheet.getCell(HEADINGS - 1, column).value === label) return sheet.getCell(HEADINGS - 1, column + 1);
  throw new RangeError(`no ${label} above the table`);
}

/** Fills one table in. */
function fill(sheet: Worksheet, lines: Answers): void {
  const columns = columnsOf(sheet);
  for (let row = HEADINGS + 1; row <= sheet.rowCount; row += 1) {
    const line = String(sheet.getCell(row, 1).value).split("/").slice(1).join("/");
    for (const [heading, value] of Object.entries(lines[line] ?? {})) {
      const column = columns.get(heading);
      if (column === undefined) throw new RangeError(`the copy asks for no ${heading}`);
      sheet.getCell(row, column).value = value;
    }
  }
}

/** A copy filled in and saved by another library. */
export async function filledIn(
  copy: Uint8Array,
  answers: Readonly<Record<string, Answers>>,
  head: { readonly by?: string; readonly on?: Given } = {},
  ...handlings: readonly Handling[]
): Promise<Uint8Array> {
  const workbook = new Workbook();
  await workbook.xlsx.load(copy);
  for (const [name, lines] of Object.entries(answers)) {
    const sheet = workbook.getWorksheet(name);
    if (sheet === undefined) throw new RangeError(`the copy has no sheet ${name}`);
    if (head.by !== undefined) headCell(sheet, "Answered by").value = head.by;
    if (head.on !== undefined) headCell(sheet, "Date").value = head.on;
    fill(sheet, lines);
  }
  for (const handling of handlings) handling(workbook);
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}
