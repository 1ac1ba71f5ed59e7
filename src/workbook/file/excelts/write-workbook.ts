import { Workbook, type Worksheet, type WorksheetView } from "@cj-tech-master/excelts";
import { calculateWorkbook } from "../../../engine/calculate-workbook";
import type { CellInput } from "../../../engine/cell-value";
import type { SheetInput } from "../../../engine/workbook-input";
import type { CellModel, SheetModel, WorkbookModel } from "../../model/sheet-model";
import { withAllowedNames } from "../../model/sheet-names";
import { withLists } from "../../sheets/lists-sheet";
import { Package } from "../package/package";
import { relationshipsOf } from "../package/relationships";
import { markDynamic } from "../write/dynamic-arrays";
import { SheetWriter } from "./write-sheet";

/** The same workbook gives the same file on every day. */
const WRITTEN = new Date(Date.UTC(2026, 0, 1));

function typedOf(cell: CellModel | undefined): CellInput | undefined {
  if (cell === undefined || cell.content === "") return undefined;
  const { content } = cell;
  return typeof content === "string" && content.startsWith("=") ? { formula: content } : { value: content };
}

const inputOf = ({ name, rows }: SheetModel): SheetInput => ({
  name,
  rows: rows.map((row) => row.map(typedOf)),
});

function viewOf({ frozenRows, frozenColumns }: SheetModel): Partial<WorksheetView> {
  const frozen = { state: "frozen", xSplit: frozenColumns, ySplit: frozenRows } as const;
  return { ...(frozenRows + frozenColumns > 0 ? frozen : {}), showGridLines: false };
}

function addSheet(book: Workbook, sheet: SheetModel): Worksheet {
  return book.addWorksheet(sheet.name, {
    views: [viewOf(sheet)],
    pageSetup: {
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      margins: { left: 0.4, right: 0.4, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 },
    },
  });
}

/** Excel reads `&` as the start of a code in headers. */
const plain = (text: string) => text.replaceAll("&", "&&");

/** Name of each worksheet's part, in the order of the sheets. */
const partOf = (position: number) => `xl/worksheets/sheet${position + 1}.xml`;

/**
 * Writes a workbook model as an .xlsx file: every formula in the form that Excel finds our functions by, with the
 * value it comes to; formulas that fill several cells marked as such; lists, status colours, frozen heads, tables
 * and a print set-up one page wide. Runs in a browser as well.
 *
 * @returns The bytes of the file; the same model gives the same bytes.
 *   A sheet whose name Excel does not take gets another, and the formulas follow.
 */
export async function writeWorkbook(model: WorkbookModel): Promise<Uint8Array> {
  const listed = withLists(withAllowedNames(model));
  const { name, sheets } = listed.workbook;
  const done = await calculateWorkbook({ sheets: sheets.map(inputOf) });
  const book = new Workbook();
  Object.assign(book, { creator: "Blade Metallurgy", title: name, created: WRITTEN, modified: WRITTEN });
  const anchors = new Map<string, readonly string[]>();
  sheets.forEach((sheet, position) => {
    const written = addSheet(book, sheet);
    written.headerFooter.oddHeader = `&L${plain(name)}&R&A`;
    written.headerFooter.oddFooter = "&L&F&RPage &P of &N";
    const writer = new SheetWriter(written, sheet, done, listed);
    writer.write();
    anchors.set(partOf(position), writer.anchors);
  });
  const bytes = new Uint8Array(await book.xlsx.writeBuffer({ zip: { modTime: WRITTEN } }));
  return finished(bytes, anchors);
}

/**
 * A file that names an older calculation engine is calculated anew when Excel opens it, and then shows #NAME? to
 * whoever has no add-in. The number is that of Excel 2019 and later (from memory).
 */
const ENGINE = 191029;

function finished(bytes: Uint8Array, anchors: ReadonlyMap<string, readonly string[]>): Uint8Array {
  const file = new Package(bytes);
  const main = relationshipsOf(file, "").find(({ kind }) => kind === "officeDocument")?.part;
  if (main === undefined) throw new RangeError("the written file has no workbook part");
  file.setText(main, file.text(main).replace(/calcId="\d+"/, `calcId="${ENGINE}"`));
  markDynamic(file, main, anchors);
  return file.save();
}
