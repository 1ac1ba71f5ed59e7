import { holds, placeOf } from "../../../formula/addresses";
import type { CellContent } from "../../model/workbook-data";
import { declarePart, removeParts } from "../package/content-types";
import { addRelationship, relationshipsOf, removeRelationships } from "../package/relationships";
import { type LiveFormula, type LiveSheet, type LiveWorkbook, readLiveWorkbook } from "../read/live-workbook";
import { METADATA, METADATA_TYPE } from "../write/dynamic-arrays";
import { cellXmlOf } from "../write/write-sheet";
import { withCharts } from "./add-charts";
import { bodyOf } from "./calculation";
import { type ChangedLooks, withLooks } from "./patch-styles";
import { justRecalculated, type Recalculation, recalculate } from "./recalculate";
import { removeCharts } from "./remove-charts";
import { SheetEditor } from "./sheet-editor";

/** A cell whose content became another one; without a content it was emptied. */
export interface ChangedCell {
  readonly row: number;
  readonly column: number;
  readonly content?: CellContent;
}

/** Changes by name of the sheet. */
export type Changes = ReadonlyMap<string, readonly ChangedCell[]>;

/** Writes what was typed into one sheet. */
class SheetPatch {
  readonly editor: SheetEditor;
  private readonly typed: ReadonlySet<number>;

  constructor(
    private readonly sheet: LiveSheet,
    private readonly changes: readonly ChangedCell[],
    private readonly marksSpills: boolean,
  ) {
    this.editor = new SheetEditor(sheet.stored);
    this.typed = new Set(changes.map(({ row, column }) => placeOf(row, column)));
  }

  run(): void {
    const formulas = [...this.sheet.formulas.values()];
    for (const formula of formulas) {
      if (this.isTypedOver(formula)) this.clearBody(formula);
      else this.makeRoom(formula);
    }
    this.partShared(formulas);
    for (const { row, column, content } of this.changes) {
      const inside = cellXmlOf(content, this.sheet.stored.prefix);
      const isMarked = inside.attributes.includes(" cm=") && !this.marksSpills;
      this.editor.setTyped(row, column, isMarked ? { ...inside, attributes: "" } : inside);
    }
  }

  private isTypedOver({ cell }: LiveFormula): boolean {
    return this.typed.has(placeOf(cell.row, cell.column));
  }

  /** Values that a formula left beside itself are no constants: they go with it. */
  private clearBody({ kind, area }: LiveFormula): void {
    if (kind === "plain") return;
    for (const [row, column] of bodyOf(area)) {
      const cell = this.editor.cellAt(row, column);
      if (cell?.raw !== undefined && !this.typed.has(placeOf(row, column))) this.editor.clear(cell);
    }
  }

  /** A cell typed where a formula fills stands in its way, as on the screen. */
  private makeRoom(formula: LiveFormula): void {
    if (formula.kind === "plain") return;
    const isInTheWay = this.changes.some(
      ({ row, column, content }) => content !== undefined && holds(formula.area, row, column),
    );
    if (!isInTheWay) return;
    this.clearBody(formula);
    const { row, column } = formula.cell;
    this.editor.setFormulaArea(formula.cell, { row, column, lastRow: row, lastColumn: column });
  }

  /** Where the cell that holds a shared formula is typed over, the others get it written out. */
  private partShared(formulas: readonly LiveFormula[]): void {
    const shared = (formula: LiveFormula) =>
      formula.cell.formula?.kind === "shared" ? formula.cell.formula.sharedIndex : undefined;
    const lost = new Set(
      formulas
        .filter((formula) => this.isTypedOver(formula) && formula.cell.formula?.text !== "")
        .map(shared),
    );
    for (const formula of formulas) {
      const group = shared(formula);
      if (group === undefined || !lost.has(group) || this.isTypedOver(formula)) continue;
      this.editor.ownFormula(formula.cell, formula.stored);
    }
  }
}

/** Makes sure that `cm="1"` means a dynamic array; false where the file uses the mark for something else. */
function canMarkSpills({ file, main, sheets }: LiveWorkbook, changes: Changes): boolean {
  const isNeeded = [...changes.values()].flat().some(({ content }) => content && "fills" in content);
  if (!isNeeded) return true;
  const known = relationshipsOf(file, main.name).some(({ kind }) => kind === "sheetMetadata");
  if (known) return sheets.some(({ stored }) => /<(?:\w+:)?c\s[^>]*\scm="1"/.test(stored.xml));
  file.setText("xl/metadata.xml", METADATA);
  declarePart(file, "xl/metadata.xml", METADATA_TYPE);
  addRelationship(file, main.name, "sheetMetadata", "xl/metadata.xml");
  return true;
}

/** The order of calculation no longer fits once formulas change; programs make it anew. */
function dropCalculationOrder({ file, main }: LiveWorkbook): void {
  const order = relationshipsOf(file, main.name).filter(({ kind }) => kind === "calcChain");
  removeRelationships(file, main.name, order);
  removeParts(
    file,
    order.flatMap(({ part }) => part ?? []),
  );
}

/**
 * Writes changed cells into a workbook file, each in its place, and recalculates it; every other byte of every
 * part stays as it is.
 *
 * @param bytes - The file as it was opened.
 * @param changes - Of sheets that the file holds; others are left out of account.
 * @param looks - Letters, number formats and hidden rows that changed, by name of the sheet.
 * @throws FileRefusal for a file that cannot be read or must not be touched.
 */
export async function patchWorkbook(
  bytes: Uint8Array,
  changes: Changes,
  looks: ReadonlyMap<string, ChangedLooks> = new Map(),
): Promise<Recalculation> {
  const isRestyled = [...looks.values()].some(({ cells, rows }) => cells.length + rows.length > 0);
  const isTouched = isRestyled || [...changes.values()].some(({ length }) => length > 0);
  const known = isTouched ? undefined : justRecalculated(bytes);
  if (known !== undefined) return known;
  const live = readLiveWorkbook(bytes);
  const marksSpills = canMarkSpills(live, changes);
  for (const sheet of live.sheets) {
    const changed = changes.get(sheet.listed.name) ?? [];
    if (changed.length === 0) continue;
    const patch = new SheetPatch(sheet, changed, marksSpills);
    patch.run();
    live.file.setText(sheet.listed.part, patch.editor.text());
  }
  if (live.file.isChanged) dropCalculationOrder(live);
  removeCharts(live, changes);
  const written = withCharts(live.file.save(), changes);
  return recalculate(isRestyled ? withLooks(written, looks) : written);
}
