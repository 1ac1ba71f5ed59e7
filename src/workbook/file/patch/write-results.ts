import type { CellValue } from "../../../engine/cell-value";
import { holds } from "../../../formula/addresses";
import { storedForm } from "../../../formula/own-names";
import { isPlanning } from "../../model/plan-names";
import { contentFrom, contentOf, isSame } from "../cell-content";
import type { LiveFormula, LiveSheet, LiveWorkbook } from "../read/live-workbook";
import { bodyOf, type Calculation } from "./calculation";
import { RowFitter } from "./fit-rows";
import { SheetEditor } from "./sheet-editor";

/** Writes the results of one sheet and counts what changed. */
class SheetRecalculation {
  readonly editor: SheetEditor;
  changed = 0;
  repaired = 0;

  constructor(
    private readonly live: LiveWorkbook,
    private readonly sheet: LiveSheet,
    private readonly done: Calculation,
  ) {
    this.editor = new SheetEditor(sheet.stored);
  }

  run(): void {
    for (const formula of this.sheet.formulas.values()) {
      this.repair(formula);
      if (!this.done.left.has(formula)) this.write(formula);
    }
  }

  private stored(row: number, column: number): CellValue | undefined {
    const cell = this.editor.cellAt(row, column);
    return cell && contentOf(cell, this.live.strings, this.live.main.from1904);
  }

  /** A cell that shares its formula is repaired where that formula is written. */
  private repair({ cell }: LiveFormula): void {
    const text = cell.formula?.text ?? "";
    const right = storedForm(text);
    if (right === text) return;
    this.editor.setFormulaText(cell, right);
    this.repaired += 1;
  }

  private write(formula: LiveFormula): void {
    const area = this.done.areaOf(formula);
    this.put(formula, formula.cell.row, formula.cell.column);
    if (formula.kind === "plain") return;
    const isResized = area.lastRow !== formula.area.lastRow || area.lastColumn !== formula.area.lastColumn;
    if (isResized) this.editor.setFormulaArea(formula.cell, area);
    for (const [row, column] of bodyOf(area)) this.put(formula, row, column);
    for (const [row, column] of bodyOf(formula.area)) {
      const cell = this.editor.cellAt(row, column);
      if (holds(area, row, column) || cell?.raw === undefined || cell.formula) continue;
      this.editor.clear(cell);
      this.changed += 1;
    }
  }

  private put(formula: LiveFormula, row: number, column: number): void {
    const content = contentFrom(this.done.resultAt(formula, row, column));
    if (isSame(this.stored(row, column), content)) return;
    this.editor.setValue(row, column, content);
    this.changed += 1;
  }
}

/** Writes the results of a calculation into the sheets of a workbook file that was read. */
export function writeResults(live: LiveWorkbook, done: Calculation): { changed: number; repaired: number } {
  const works = live.sheets.map((sheet) => new SheetRecalculation(live, sheet, done));
  for (const work of works) work.run();
  const sum = (key: "changed" | "repaired") => works.reduce((all, work) => all + work[key], 0);
  const [changed, repaired] = [sum("changed"), sum("repaired")];
  // Rows of other workbooks are as high as their makers want them.
  const fitter = changed > 0 && isPlanning(live.main.listed) ? new RowFitter(live, done) : undefined;
  live.sheets.forEach((sheet, at) => {
    const editor = works[at]?.editor;
    if (editor === undefined) return;
    fitter?.fit(sheet, editor);
    if (editor.isChanged) live.file.setText(sheet.listed.part, editor.text());
  });
  return { changed, repaired };
}
