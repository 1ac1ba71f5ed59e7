import type { CellValue } from "../../../engine/cell-value";
import { cellName, placeOf, type Rectangle, rectangleName } from "../../../formula/addresses";
import { writtenForm } from "../cell-content";
import { type CellXml, resultXml } from "../cell-xml";
import { applyEdits, type Edit } from "../package/edits";
import { escapeXml, withAttribute } from "../package/xml";
import type { StoredCell, StoredSheet } from "../read/stored-sheet";
import { insertedCells, type NewCell } from "./insert-cells";

/** Changes to the values and formulas of one worksheet part; all that is not changed keeps its very characters. */
export class SheetEditor {
  private readonly edits: Edit[] = [];
  private readonly added: NewCell[] = [];
  private readonly cells: ReadonlyMap<number, StoredCell>;

  constructor(readonly sheet: StoredSheet) {
    this.cells = new Map(
      sheet.rows.flatMap(({ cells }) => cells.map((cell) => [placeOf(cell.row, cell.column), cell] as const)),
    );
  }

  cellAt(row: number, column: number): StoredCell | undefined {
    return this.cells.get(placeOf(row, column));
  }

  get isChanged(): boolean {
    return this.edits.length > 0 || this.added.length > 0;
  }

  /** Writes what a formula gave, into its own cell or one that it fills. */
  setValue(row: number, column: number, content: CellValue): void {
    const cell = this.cellAt(row, column);
    if (cell) this.replaceValue(cell, content);
    else this.added.push({ row, column, inside: resultXml(content, this.sheet.prefix) });
  }

  /**
   * Puts into a cell what somebody typed, in the place of its value and its formula.
   *
   * @param style - The `s` attribute where the style changes too.
   */
  setTyped(row: number, column: number, inside: CellXml, style?: string): void {
    const cell = this.cellAt(row, column);
    const styled = style === undefined ? "" : ` s="${style}"`;
    if (cell === undefined) {
      const attributes = styled + inside.attributes;
      this.added.push({ row, column, inside: { attributes, xml: inside.xml } });
      return;
    }
    const open =
      style === undefined
        ? this.emptyTag(cell)
        : withAttribute(`${this.emptyTag(cell)}>`, "s", style).slice(0, -1);
    const end = inside.xml === "" ? "/>" : `>${inside.xml}</${this.sheet.prefix}c>`;
    this.edits.push({ start: cell.start, end: cell.end, text: open + inside.attributes + end });
  }

  /** Gives a cell another style and leaves what stands in it. @param style - The `s` attribute. */
  setStyle(row: number, column: number, style: string): void {
    const cell = this.cellAt(row, column);
    if (cell === undefined) {
      this.added.push({ row, column, inside: { attributes: ` s="${style}"`, xml: "" } });
      return;
    }
    const tag = this.sheet.xml.slice(cell.start, cell.tagEnd);
    this.replace(cell.start, cell.tagEnd, withAttribute(tag, "s", style));
  }

  /** Gives a cell that shares the formula of another a formula of its own. */
  ownFormula({ formula }: StoredCell, text: string): void {
    if (formula === undefined) return;
    const { prefix } = this.sheet;
    this.replace(formula.start, formula.end, `<${prefix}f>${escapeXml(text)}</${prefix}f>`);
  }

  /** Empties a cell that a formula no longer fills; its style stays. */
  clear(cell: StoredCell): void {
    const text = cell.style === undefined ? "" : `${this.emptyTag(cell)}/>`;
    this.edits.push({ start: cell.start, end: cell.end, text });
  }

  setFormulaText(cell: StoredCell, text: string): void {
    const { formula } = cell;
    if (formula === undefined || formula.tagEnd > formula.closeStart) return;
    this.edits.push({ start: formula.tagEnd, end: formula.closeStart, text: escapeXml(text) });
  }

  /** Says which cells an array formula fills. */
  setFormulaArea(cell: StoredCell, area: Rectangle): void {
    const { formula } = cell;
    if (formula === undefined) return;
    const tag = this.sheet.xml.slice(formula.start, formula.tagEnd);
    const text = withAttribute(tag, "ref", rectangleName(area));
    this.edits.push({ start: formula.start, end: formula.tagEnd, text });
  }

  /** Replaces a stretch of the part by its place, for what is not a value. */
  replace(start: number, end: number, text: string): void {
    this.edits.push({ start, end, text });
  }

  /** The text of the part with all changes. */
  text(): string {
    return applyEdits(this.sheet.xml, [...this.edits, ...insertedCells(this.sheet, this.added)]);
  }

  private emptyTag(cell: StoredCell): string {
    const { xml } = this.sheet;
    const tag = xml.slice(cell.start, cell.tagEnd);
    const open = ["t", "cm", "vm"].reduce((text, name) => withAttribute(text, name, undefined), tag);
    return open.replace(/\s*\/?>$/, "");
  }

  private replaceValue(cell: StoredCell, content: CellValue): void {
    const { xml, prefix } = this.sheet;
    const { type, text } = writtenForm(content);
    // Rich content that the file kept beside the old value (`vm`) does not belong to the new one.
    const tag = withAttribute(withAttribute(xml.slice(cell.start, cell.tagEnd), "t", type), "vm", undefined);
    const value = `<${prefix}v>${escapeXml(text)}</${prefix}v>`;
    if (tag.endsWith("/>")) {
      const open = `${tag.slice(0, -2).trimEnd()}>`;
      this.edits.push({ start: cell.start, end: cell.end, text: `${open}${value}</${prefix}c>` });
      return;
    }
    this.edits.push({ start: cell.start, end: cell.tagEnd, text: tag });
    const after = cell.formula?.end ?? cell.tagEnd;
    const [start, end] = cell.valueStart < 0 ? [after, after] : [cell.valueStart, cell.valueEnd];
    this.edits.push({ start, end, text: value });
  }
}

/** Address of a stored cell without its sheet. */
export const nameOf = ({ row, column }: { readonly row: number; readonly column: number }): string =>
  cellName(row, column);
