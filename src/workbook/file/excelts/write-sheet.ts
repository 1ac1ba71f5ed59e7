import type { CellValue as ExceltsValue, Worksheet } from "@cj-tech-master/excelts";
import type { CalculatedWorkbook } from "../../../engine/calculate-workbook";
import type { CellValue } from "../../../engine/cell-value";
import { cellName, columnLetters } from "../../../formula/addresses";
import { fileForm } from "../../../formula/file-form";
import { STATUS_COLOURS } from "../../model/colors";
import { heightOf, type ShownCell } from "../../model/row-heights";
import type { CellModel, SheetModel, SheetTable } from "../../model/sheet-model";
import { type Listed, listArea } from "../../sheets/lists-sheet";
import { contentFrom } from "../cell-content";
import { argb, filledWith, styleOf } from "./cell-styles";

/** Excel counts widths in figures of its font, seven pixels each with five between columns, heights in points. */
const widthOf = (pixels: number) => Math.max(1, (pixels - 5) / 7);
const points = (pixels: number) => pixels * 0.75;

const A4 = 9;
/** Excel's number of the paper; its name is missing in the writer's list. */
const A3 = 8;
/** A wider sheet, in pixels, could not be read on A4 without a glass. */
const WIDEST_ON_A4 = 1500;

type FileValue = Exclude<ExceltsValue, undefined>;

const written = (content: CellValue): FileValue =>
  "error" in content ? { error: content.error as "#N/A" } : content.value;

const isFormula = (content: CellModel["content"]) => typeof content === "string" && content.startsWith("=");

/** Writes one sheet of a model, with the values that its formulas came to. */
export class SheetWriter {
  /** Formulas that fill several cells. */
  readonly anchors: string[] = [];

  constructor(
    private readonly sheet: Worksheet,
    private readonly model: SheetModel,
    private readonly done: CalculatedWorkbook,
    private readonly listed: Listed,
  ) {}

  write(): void {
    this.model.columnWidths.forEach((pixels, column) => {
      this.sheet.getColumn(column + 1).width = widthOf(pixels);
    });
    for (const table of this.model.tables ?? []) this.addTable(table);
    this.model.rows.forEach((row, index) => {
      row.forEach((cell, column) => {
        if (cell !== undefined) this.writeCell(cell, index, column);
      });
    });
    this.setHeights();
    this.addRules();
    this.addLists();
    this.setPrint();
  }

  private setHeights(): void {
    const { rows, rowHeights, columnWidths } = this.model;
    rows.forEach((row, index) => {
      const cells = row.flatMap((model, column): ShownCell[] => {
        if (model === undefined) return [];
        return [{ model, text: this.textAt(model, index, column), width: columnWidths[column] ?? 64 }];
      });
      const pixels = rowHeights[index] ?? heightOf(cells);
      if (pixels !== undefined) this.sheet.getRow(index + 1).height = points(pixels);
    });
  }

  private textAt({ content }: CellModel, row: number, column: number): string {
    if (!isFormula(content)) return String(content);
    const result = this.resultAt(row, column);
    return "error" in result ? result.error : String(result.value);
  }

  private resultAt(row: number, column: number): CellValue {
    return contentFrom(this.done.at(this.model.name, row, column) ?? { value: 0 });
  }

  private writeCell(model: CellModel, row: number, column: number): void {
    const cell = this.sheet.getCell(row + 1, column + 1);
    cell.style = styleOf(model);
    if (isFormula(model.content)) this.writeFormula(String(model.content), row, column);
    else if (model.content !== "") cell.value = model.content;
  }

  private writeFormula(content: string, row: number, column: number): void {
    const cell = this.sheet.getCell(row + 1, column + 1);
    const formula = fileForm(content);
    const result = written(this.resultAt(row, column)) as string;
    const spill = this.done.spillAt(this.model.name, row, column);
    if (spill === undefined || (spill.rows === 1 && spill.columns === 1)) {
      cell.value = { formula, result };
      return;
    }
    const last = cellName(row + spill.rows - 1, column + spill.columns - 1);
    cell.value = { formula, result, shareType: "array", ref: `${cellName(row, column)}:${last}` };
    this.anchors.push(cellName(row, column));
    this.writeSpill(row, column, spill);
  }

  private writeSpill(
    row: number,
    column: number,
    { rows, columns }: { rows: number; columns: number },
  ): void {
    for (let r = row; r < row + rows; r += 1) {
      for (let c = column; c < column + columns; c += 1) {
        if (r === row && c === column) continue;
        this.sheet.getCell(r + 1, c + 1).value = written(this.resultAt(r, c));
      }
    }
  }

  private addTable({ name, row, column, rows, columns }: SheetTable): void {
    const names = this.model.rows[row]?.slice(column, column + columns) ?? [];
    this.sheet.addTable({
      name,
      ref: cellName(row, column),
      style: { theme: "TableStyleLight1", showRowStripes: false },
      columns: names.map((cell) => ({ name: String(cell?.content ?? ""), filterButton: true })),
      rows: Array.from({ length: rows - 1 }, () => names.map(() => null)),
    });
  }

  private addRules(): void {
    const [first, last] = this.model.lines;
    for (const column of this.model.statusColumns) {
      const letters = columnLetters(column);
      const rules = STATUS_COLOURS.map(([word, colour], index) => ({
        type: "expression" as const,
        priority: index + 1,
        formulae: [`ISNUMBER(FIND("${word}",${letters}${first + 1}))`],
        style: { fill: { ...filledWith(colour), bgColor: argb(colour) } },
      }));
      this.sheet.addConditionalFormatting({ ref: `${letters}${first + 1}:${letters}${last + 1}`, rules });
    }
  }

  private addLists(): void {
    for (const list of this.model.wordLists) {
      if (list.words.length === 0) continue;
      const area = listArea(list, this.model.lines);
      this.sheet.dataValidations.add(area, {
        type: "list",
        allowBlank: true,
        showErrorMessage: false,
        formulae: [this.listed.sourceOf(list)],
      });
    }
  }

  private setPrint(): void {
    const { print } = this.model;
    const { pageSetup } = this.sheet;
    const width = this.model.columnWidths.reduce((sum, pixels) => sum + pixels, 0);
    pageSetup.paperSize = width > WIDEST_ON_A4 ? A3 : A4;
    pageSetup.orientation = print?.landscape ? "landscape" : "portrait";
    const repeated = print?.repeatedRows;
    if (repeated !== undefined) pageSetup.printTitlesRow = `${repeated[0] + 1}:${repeated[1] + 1}`;
    for (const row of print?.breaksAfter ?? []) this.sheet.getRow(row + 1).addPageBreak();
  }
}
