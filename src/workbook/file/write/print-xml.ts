import { cellName, columnLetters } from "../../../formula/addresses";
import { quotedSheet } from "../../../formula/sheet-names";
import { fileForm } from "../../../formula/stored-form";
import { columnsByPage, isLandscape, type PageName, pageMargins, pageName } from "../../model/page-size";
import type { Paper, SheetData } from "../../model/workbook-data";
import { escapeXml } from "../package/xml";

/** Sheets of paper by their numbers (ST_PaperSize; ECMA-376 Part 1, 18.3.1.63). */
const NUMBERS: Readonly<Record<PageName, number>> = { A4: 9, A3: 8, letter: 1, tabloid: 3 };
/** Rows down to which a paper may be printed. */
const MAX_PRINTED_ROWS = 100_000;
/** The last column of the file format, counted from 0. */
const LAST_COLUMN = 16_383;

/** `&` begins a code in heads and feet of pages. */
const plain = (text: string) => text.replaceAll("&", "&&");

/** The sizes of paper to which a number of a file belongs. */
export const paperNumbered = (number: number): Paper =>
  number === NUMBERS.letter || number === NUMBERS.tabloid ? "letter" : "A4";

function headAndFoot(title: string | undefined): string {
  const head = `${title === undefined ? "" : `&L${plain(title)}`}&R&A`;
  return (
    `<headerFooter><oddHeader>${escapeXml(head)}</oddHeader>` +
    `<oddFooter>${escapeXml("&L&F&RPage &P of &N")}</oddFooter></headerFooter>`
  );
}

/** A break stands behind the row it names, counted from 1. */
function breaksXml(rows: readonly number[] = []): string {
  if (rows.length === 0) return "";
  const breaks = rows.map((row) => `<brk id="${row + 1}" max="${LAST_COLUMN}" man="1"/>`);
  return `<rowBreaks count="${rows.length}" manualBreakCount="${rows.length}">${breaks.join("")}</rowBreaks>`;
}

function pageXml(sheet: SheetData, headRoom: number): string {
  const { side, end } = pageMargins(sheet);
  const orientation = isLandscape(sheet) ? "landscape" : "portrait";
  return (
    `<pageMargins left="${side}" right="${side}" top="${end}" bottom="${end}" header="${headRoom}" footer="${headRoom}"/>` +
    `<pageSetup paperSize="${NUMBERS[pageName(sheet)]}" orientation="${orientation}" fitToWidth="${columnsByPage(sheet).length}" fitToHeight="0"/>`
  );
}

/**
 * What a worksheet part says of printing, in the order of the schema: as many pages wide as its
 * letters ask for, as many long as it takes. A paper
 * has nothing of the workbook in its margins; each of its pages says which one it is.
 */
export function printXml(sheet: SheetData, title: string | undefined): string {
  const { breaksAfter, isPaper } = sheet.print ?? {};
  if (isPaper) return pageXml(sheet, 0.2) + breaksXml(breaksAfter);
  return pageXml(sheet, 0.3) + headAndFoot(title) + breaksXml(breaksAfter);
}

function printTitles({ name, print }: SheetData): string | undefined {
  const { repeatedColumns: columns = 0, repeatedRows: rows } = print ?? {};
  const spans = [
    ...(columns === 0 ? [] : [`$A:$${columnLetters(columns - 1)}`]),
    ...(rows === undefined ? [] : [`$${rows[0] + 1}:$${rows[1] + 1}`]),
  ];
  return spans.length === 0 ? undefined : spans.map((span) => `${quotedSheet(name)}!${span}`).join(",");
}

/**
 * The area that is printed. Of a paper it is worked out by the program that prints, so that a batch typed later gets its
 * page.
 */
function printArea({ name, print }: SheetData): string | undefined {
  if (print?.printed !== undefined) {
    const { columns, rows } = print.printed;
    const sheet = quotedSheet(name);
    const last = `$${columnLetters(columns - 1)}`;
    return `${sheet}!$A$1:INDEX(${sheet}!${last}$1:${last}$${MAX_PRINTED_ROWS},${fileForm(rows)})`;
  }
  if (print?.area === undefined) return undefined;
  const { row, column, lastRow, lastColumn } = print.area;
  return `${quotedSheet(name)}!${cellName(row, column, "both")}:${cellName(lastRow, lastColumn, "both")}`;
}

/** What a sheet prints and the columns and rows that stand again on every page, as names of the sheet in its place of the list. */
export function printNamesXml(sheet: SheetData, position: number): string {
  const names = [
    ["_xlnm.Print_Area", printArea(sheet)],
    ["_xlnm.Print_Titles", printTitles(sheet)],
  ] as const;
  return names
    .map(([name, refers]) =>
      refers === undefined
        ? ""
        : `<definedName name="${name}" localSheetId="${position}">${escapeXml(refers)}</definedName>`,
    )
    .join("");
}
