import { type Cell, Workbook, type Worksheet } from "@cj-tech-master/excelts";
import { beforeAll, describe, expect, it } from "vitest";
import { BLADE_STATUSES } from "../../src/core/blade/status";
import { HARDENING_WORDS } from "../../src/core/hardening/hardens";
import type { CellValue } from "../../src/engine/cell-value";
import { readWorkbook } from "../../src/workbook/file/read/read-workbook";
import type { CellModel, WorkbookModel } from "../../src/workbook/model/sheet-model";
import type { CellContent, CellData, WorkbookData } from "../../src/workbook/model/workbook-data";
import { workbookOfModel } from "../../src/workbook/sheets/parts/workbook-of-model";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { exampleData } from "../../src/workbook/sheets/template-data";
import { withPart } from "./packages";

// What the planning workbook asks for, read back from the file by a library that is not ours and by our own reader.
// The counts are those of the files that another writer, with another library, wrote of the same run before.

const LONG = 240_000;
let model: WorkbookModel;
let read: Workbook;
let own: WorkbookData;
let file: Uint8Array;

beforeAll(async () => {
  model = planningTemplate(exampleData());
  file = await planningFile(model);
  read = new Workbook();
  await read.xlsx.load(file);
  own = (await readWorkbook(file)).workbook;
}, LONG);

const sum = (count: (sheet: Worksheet) => number) =>
  read.worksheets.reduce((all, sheet) => all + count(sheet), 0);

const value = (result: CellValue | undefined) => {
  if (result === undefined || !("value" in result)) return result?.error;
  return typeof result.value === "number" ? Number(result.value.toPrecision(14)) : result.value;
};

/** What is known of a cell's formula: its value, and those of the cells it fills. */
function known({ row, column, content }: CellData) {
  if (content === undefined || !("formula" in content)) return [row, column];
  const filled = content.filled?.map((cells) => cells.map(value));
  return [row, column, value(content.result), content.fills, filled];
}

/** Every planned cell with the one that the library read in its place. */
function cells(): (readonly [string, CellModel, Cell])[] {
  return model.sheets.flatMap(({ name, rows }) =>
    rows.flatMap((line, row) =>
      line.flatMap((cell, column) => {
        const found = read.getWorksheet(name)?.getCell(row + 1, column + 1);
        return cell && found ? [[`${name}!${found.address}`, cell, found] as const] : [];
      }),
    ),
  );
}

const isFormula = ({ content }: CellModel) => typeof content === "string" && content.startsWith("=");

/** A constant as it was planned. Days count from the end of 1899: day 25 569 is the first of 1970. */
const constant = ({ value }: Cell) =>
  value instanceof Date ? value.getTime() / 86_400_000 + 25_569 : (value ?? "");

/** The library leaves out a result that is an empty text. */
const hasResult = ({ value }: Cell) => typeof value === "object" && value !== null && "result" in value;

const SHADES: Partial<Record<CellModel["role"], string>> = {
  heading: "FFE8EBEE",
  mark: "FFE8EBEE",
  label: "FFFDF3D8",
  typed: "FFFDF3D8",
};

function styleAsked({ role, format, wrap = false }: CellModel) {
  return {
    fill: SHADES[role],
    font: "Arial",
    size: role === "title" ? 13 : 10,
    bold: ["title", "heading", "label", "openLabel"].includes(role),
    frame: ["title", "note", "open", "openLabel"].includes(role) ? undefined : "thin thin thin thin",
    horizontal: format !== undefined && role !== "words" ? "right" : "left",
    wrap,
    format: format ?? "General",
  };
}

function frameOf({ border }: Cell) {
  const sides = [border?.top, border?.right, border?.bottom, border?.left].map((side) => side?.style);
  return sides.every((style) => style === undefined) ? undefined : sides.join(" ");
}

const styleFound = (cell: Cell) => ({
  fill: cell.fill?.type === "pattern" ? cell.fill.fgColor?.argb : undefined,
  font: cell.font?.name,
  size: cell.font?.size,
  bold: cell.font?.bold === true,
  frame: frameOf(cell),
  horizontal: cell.alignment?.horizontal,
  wrap: cell.alignment?.wrapText === true,
  format: cell.numFmt ?? "General",
});

describe("read by another library", () => {
  it("has the counts of the files of before", () => {
    expect(read.worksheets.map(({ name }) => name)).toEqual([
      ...model.sheets.map(({ name }) => name),
      "Lists",
    ]);
    const rules = (sheet: Worksheet) =>
      sheet.conditionalFormattings.reduce((all, { rules: found }) => all + found.length, 0);
    // Five columns of dates more, of eight words each.
    expect(sum(rules)).toBe(241);
    expect(sum(({ pageSetup }) => Number(pageSetup.orientation === "portrait"))).toBe(12);
    // Two more than before: a batch that is put into the free rows has its page of the heat-treat order.
    expect(sum(({ rowBreaks }) => rowBreaks.length)).toBe(22);
    expect(sum(({ pageSetup }) => Number(pageSetup.printTitlesRow !== undefined))).toBe(19);
    const hasHeads = ({ headerFooter }: { readonly headerFooter?: Worksheet["headerFooter"] }) =>
      headerFooter?.oddHeader === "&LRun R-07, Tern Hollow Forge&R&A" &&
      headerFooter?.oddFooter === "&L&F&RPage &P of &N";
    expect(sum((sheet) => Number(hasHeads(sheet)))).toBe(24);
    expect(sum((sheet) => sheet.getTables().length)).toBe(17);
    expect(sum(({ dataValidations }) => Object.keys(dataValidations.model).length)).toBe(32);
  });

  it("prints of a paper the pages that have a subject, and nothing of the workbook in its margins", () => {
    const papers = model.sheets.filter(({ print }) => print?.isPaper);
    expect(papers.map(({ name }) => name)).toEqual(
      expect.arrayContaining(["Quote", "Steel enquiry", "Steel order", "Heat-treat order", "Traveller"]),
    );
    for (const { name, columnWidths, hiddenColumns = [] } of papers) {
      const sheet = read.getWorksheet(name);
      // A part without heads leaves the whole entry out.
      expect(sheet?.headerFooter as unknown, name).toBeUndefined();
      // 8.27 in of A4 less two margins of 0.4 in, at 96 pixels an inch.
      expect(
        columnWidths.reduce((all, width, at) => (hiddenColumns.includes(at) ? all : all + width), 0),
        name,
      ).toBeLessThanOrEqual(717);
    }
  });

  it("goes to paper one page wide, wide sheets on A3 (number 8), the others on A4 (9)", () => {
    for (const { name, pageSetup, views } of read.worksheets) {
      expect(pageSetup, name).toMatchObject({ fitToPage: true, fitToHeight: 0 });
      const widths = model.sheets.find((sheet) => sheet.name === name)?.columnWidths ?? [];
      const isWide = widths.reduce((all, width) => all + width, 0) > 1500;
      expect(pageSetup.paperSize, name).toBe(isWide ? 8 : 9);
      expect(views[0]?.showGridLines, name).toBe(false);
    }
  });

  it("breaks pages and repeats rows where the plan says", () => {
    for (const { name, print } of model.sheets) {
      const sheet = read.getWorksheet(name);
      const breaks = (print?.breaksAfter ?? []).map((row) => row + 1);
      expect(
        sheet?.rowBreaks.map(({ id }) => id),
        name,
      ).toEqual(breaks);
      const repeated = print?.repeatedRows?.map((row) => row + 1).join(":");
      expect(sheet?.pageSetup.printTitlesRow, name).toBe(repeated);
    }
  });

  it("holds every constant as planned and formulas with their values", () => {
    const [formulas, constants] = [true, false].map((wanted) =>
      cells().filter(([, planned]) => isFormula(planned) === wanted),
    );
    for (const [address, { content }, cell] of constants ?? []) expect(constant(cell), address).toBe(content);
    for (const [address, , { value }] of formulas ?? []) expect(value, address).toHaveProperty("formula");
    expect(formulas?.filter(([, , cell]) => hasResult(cell)).length).toBeGreaterThan(1500);
  });

  it("gives cells the style of their role: shade, letters, frame, place", () => {
    for (const [address, planned, cell] of cells())
      expect(styleFound(cell), address).toEqual(styleAsked(planned));
  });

  it("is not calculated anew on opening", () => {
    expect(read.calcProperties).not.toMatchObject({ fullCalcOnLoad: true });
  });
});

describe("read by our own reader", () => {
  const essence = (content: CellContent | undefined) =>
    content !== undefined && "formula" in content ? content.formula : content;

  it("is opened with the values it holds, which are those that a file of another version is calculated to", async () => {
    const older = withPart(file, "docProps/core.xml", (text) =>
      text.replace(/<cp:version>[^<]*/, "<cp:version>0"),
    );
    const calculated = (await readWorkbook(older)).workbook;
    for (const [index, sheet] of calculated.sheets.entries()) {
      const stored = own.sheets[index];
      expect(stored?.cells.map(known), sheet.name).toEqual(sheet.cells.map(known));
    }
  });

  it("comes back as it was planned", () => {
    const asked = workbookOfModel(model);
    for (const [index, sheet] of asked.sheets.entries()) {
      const again = own.sheets[index];
      const byPlace = new Map(again?.cells.map((cell) => [`${cell.row} ${cell.column}`, cell]));
      for (const { row, column, content, style } of sheet.cells) {
        const found = byPlace.get(`${row} ${column}`);
        expect(essence(found?.content), `${sheet.name} ${row} ${column}`).toEqual(essence(content));
        expect(found?.style, `${sheet.name} ${row} ${column}`).toEqual(style);
      }
      expect(again?.columns).toEqual(sheet.columns);
      expect(again?.colors).toEqual(sheet.colors);
      expect([again?.frozenRows, again?.frozenColumns]).toEqual([sheet.frozenRows, sheet.frozenColumns]);
      expect(again?.offers).toHaveLength(sheet.offers.filter(({ words = [] }) => words.length > 0).length);
    }
    expect(own.tables).toEqual(asked.tables);
  });

  it("colours every word that a blade's status and hardening may be, the longer one first", () => {
    const column = (name: string, heading: string) => {
      const sheet = own.sheets.find((each) => each.name === name);
      const headings = sheet?.cells.filter(
        ({ content }) => content && "value" in content && content.value === heading,
      );
      const place = headings?.[0]?.column;
      return (sheet?.colors ?? []).filter(({ areas }) => areas[0]?.column === place).map(({ word }) => word);
    };
    const words = column("Lines", "Against the band");
    expect(words).toEqual(column("Lines", "Hardens through"));
    expect(words).toEqual(expect.arrayContaining([...BLADE_STATUSES, ...HARDENING_WORDS]));
    const first = (status: string) => words.find((word) => status.includes(word));
    for (const status of [...BLADE_STATUSES, ...HARDENING_WORDS]) expect(first(status), status).toBe(status);
  });

  it("colours all eight words of a check, and HIGH only in capitals", () => {
    const words = own.sheets.find(({ name }) => name === "Steel and heats")?.colors ?? [];
    const [first] = words;
    const ofColumn = words.filter(({ areas }) => areas[0]?.column === first?.areas[0]?.column);
    expect(ofColumn.map(({ word }) => word)).toEqual("HIGH LOW FAIL CHECK CHANGED TWICE OK PASS".split(" "));
    const verdict = "FAIL: Mn high";
    expect(ofColumn.filter(({ word }) => verdict.includes(word)).map(({ word }) => word)).toEqual(["FAIL"]);
    // FIND heeds capitals, SEARCH does not (Excel's help on both).
    const rules = read
      .getWorksheet("Steel and heats")
      ?.conditionalFormattings.flatMap((found) => found.rules);
    for (const rule of rules ?? []) expect(JSON.stringify(rule)).toMatch(/ISNUMBER\(FIND\(/);
  });
});
