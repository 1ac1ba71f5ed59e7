import { cellName, columnLetters } from "../../../formula/addresses";
import { quotedSheet } from "../../../formula/sheet-names";
import { fileForm } from "../../../formula/stored-form";
import type { Paper, SheetData } from "../../model/workbook-data";
import { escapeXml } from "../package/xml";

/** Papers by their numbers (ST_PaperSize; ECMA-376 Part 1, 18.3.1.63). */
const SIZES: Readonly<Record<Paper, { readonly usual: number; readonly wide: number }>> = {
  A4: { usual: 9, wide: 8 },
  letter: { usual: 1, wide: 3 },
};
/** Rows down to which a paper may be printed. */
const MAX_PRINTED_ROWS = 100_000;
/** A wider sheet, in pixels, could not be read on A4 without a glass. */
const WIDEST_ON_A4 = 1500;
/** The last column of the file format, counted from 0. */
const LAST_COLUMN = 16_383;

/** `&` begins a code in heads and feet of pages. */
const plain = (text: string) => text.replaceAll("&", "&&");

const sizesOf = ({ print }: SheetData) => SIZES[print?.paper ?? "A4"];

/** The sizes of paper to which a number of a file belongs. */
export const paperNumbered = (number: number): Paper =>
  Object.values(SIZES.letter).includes(number) ? "letter" : "A4";

function paperOf(sheet: SheetData): number {
  const { columns } = sheet;
  const { usual, wide } = sizesOf(sheet);
  const width = [...columns.values()].reduce((sum, { size = 0 }) => sum + size, 0);
  return width > WIDEST_ON_A4 ? wide : usual;
}

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

const orientationOf = ({ print }: SheetData) => (print?.landscape === false ? "portrait" : "landscape");

/** A paper has nothing of the workbook in its margins; each of its pages says which one it is. */
const paperXml = (sheet: SheetData) =>
  '<pageMargins left="0.4" right="0.4" top="0.4" bottom="0.4" header="0.2" footer="0.2"/>' +
  `<pageSetup paperSize="${sizesOf(sheet).usual}" orientation="${orientationOf(sheet)}" fitToWidth="1" fitToHeight="0"/>` +
  breaksXml(sheet.print?.breaksAfter);

/** What a worksheet part says of printing, in the order of the schema: one page wide, as many long as it takes. */
export function printXml(sheet: SheetData, title: string | undefined): string {
  const { breaksAfter, isPaper } = sheet.print ?? { landscape: true };
  if (isPaper) return paperXml(sheet);
  return (
    '<pageMargins left="0.4" right="0.4" top="0.6" bottom="0.6" header="0.3" footer="0.3"/>' +
    `<pageSetup paperSize="${paperOf(sheet)}" orientation="${orientationOf(sheet)}" fitToWidth="1" fitToHeight="0"/>` +
    headAndFoot(title) +
    breaksXml(breaksAfter)
  );
}

function printTitles({ name, print }: SheetData): string | undefined {
  if (print?.repeatedRows === undefined) return undefined;
  const [first, last] = print.repeatedRows;
  return `${quotedSheet(name)}!$${first + 1}:$${last + 1}`;
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

/** What a sheet prints and the rows that stand again on every page, as names of the sheet in its place of the list. */
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
