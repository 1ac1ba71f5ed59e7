import type { CellValue } from "../../../engine/cell-value";
import { holds } from "../../../formula/addresses";
import { storedForm } from "../../../formula/stored-form";
import { isPlanning } from "../../model/plan-names";
import { contentFrom, contentOf, isSame } from "../cell-content";
import { type LiveFormula, type LiveSheet, type LiveWorkbook, readLiveWorkbook } from "../read/live-workbook";
import { bodyOf, type Calculation, calculateFile } from "./calculation";
import { RowFitter } from "./fit-rows";
import { writePrintAreas } from "./print-areas";
import { nameOf, SheetEditor } from "./sheet-editor";

/** A cell and what there is to say about it. */
export interface CellRemark {
  readonly sheet: string;
  readonly cell: string;
  readonly text: string;
}

/** What a recalculation did. */
export interface Recalculation {
  /** The whole file; the very bytes that were given where nothing had to change. */
  readonly bytes: Uint8Array;
  readonly isChanged: boolean;
  readonly formulas: number;
  /** Cells whose value is another one than before, filled and emptied ones counted. */
  readonly changed: number;
  /** Formulas whose function names were broken and now stand as Excel finds them. */
  readonly repaired: number;
  /** Formulas that keep their stored value, with the reason. */
  readonly left: readonly CellRemark[];
  /** Formulas that give several values of which the file shows only the first. */
  readonly cutShort: readonly CellRemark[];
  /** Formulas that come to an error, with its sentence. */
  readonly errors: readonly CellRemark[];
}

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

const CUT_SHORT =
  "gives several values, but the file marks it for one cell: enter it again in Excel to see them all";

const remark = ({ sheet, cell }: LiveFormula, text: string): CellRemark => ({
  sheet,
  cell: nameOf(cell),
  text,
});

/** Formulas of a workbook that come to an error, with its sentence. */
export function errorsOf(live: LiveWorkbook, done: Calculation): CellRemark[] {
  return live.sheets.flatMap(({ formulas }) =>
    [...formulas.values()].flatMap((formula): CellRemark[] => {
      if (done.left.has(formula)) return [];
      const result = done.resultAt(formula, formula.cell.row, formula.cell.column);
      if (!("error" in result)) return [];
      const text = result.message === undefined ? result.error : `${result.error}: ${result.message}`;
      return [remark(formula, text)];
    }),
  );
}

/** Formulas that keep the value the file held, with the reason. */
export function leftAsTheyWere(done: Calculation): CellRemark[] {
  return [...done.left].map(([formula, reason]) => remark(formula, reason));
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

/**
 * Recalculates a workbook file. Only values and broken names of our functions are written, each in its place:
 * every other byte of every part stays as it is. The file never asks to be calculated on opening because of it.
 *
 * @param bytes - The .xlsx file.
 * @param onProgress - Told in a few words what is being done.
 * @throws FileRefusal for a file that cannot be read or must not be touched.
 */
export async function recalculate(
  bytes: Uint8Array,
  onProgress: (words: string) => void = () => undefined,
): Promise<Recalculation> {
  onProgress("reading");
  const live = readLiveWorkbook(bytes);
  const formulas = live.sheets.reduce((sum, sheet) => sum + sheet.formulas.size, 0);
  onProgress(`calculating ${formulas} formulas`);
  const done = await calculateFile(live);
  onProgress("writing");
  const { changed, repaired } = writeResults(live, done);
  if (changed > 0) writePrintAreas(live, done);
  return {
    bytes: live.file.save(),
    isChanged: live.file.isChanged,
    formulas,
    changed,
    repaired,
    left: leftAsTheyWere(done),
    cutShort: [...done.first].map((formula) => remark(formula, CUT_SHORT)),
    errors: errorsOf(live, done),
  };
}
