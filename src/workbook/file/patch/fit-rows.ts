import { placeOf } from "../../../formula/addresses";
import { neededHeights } from "../../model/row-heights";
import type { CellContent, CellData, CellStyle } from "../../model/workbook-data";
import { contentOf } from "../cell-content";
import { withAttribute } from "../package/xml";
import type { LiveSheet, LiveWorkbook } from "../read/live-workbook";
import { readLayout } from "../read/read-layout";
import type { StoredCell, StoredRow } from "../read/stored-sheet";
import { readStylesOf } from "../read/workbook-styles";
import { rowPoints } from "../sizes";
import type { Calculation } from "./calculation";
import type { SheetEditor } from "./sheet-editor";

/** Makes the rows of a calculated sheet as high as what stands in them now. */
export class RowFitter {
  private readonly styles: readonly CellStyle[];
  private readonly ruleFills: readonly (string | undefined)[];

  constructor(
    private readonly live: LiveWorkbook,
    private readonly done: Calculation,
  ) {
    const { styles, ruleFills } = readStylesOf(live);
    this.styles = styles;
    this.ruleFills = ruleFills;
  }

  private content({ formulas }: LiveSheet, cell: StoredCell): CellContent | undefined {
    const formula = formulas.get(placeOf(cell.row, cell.column));
    if (formula !== undefined && !this.done.left.has(formula))
      return this.done.resultAt(formula, cell.row, cell.column);
    return contentOf(cell, this.live.strings, this.live.main.from1904);
  }

  /** Only a text that breaks into lines, or a title, asks for a height. */
  private cells(sheet: LiveSheet): CellData[] {
    return sheet.stored.rows.flatMap(({ cells }) =>
      cells.flatMap((cell): CellData[] => {
        const style = this.styles[Number(cell.style ?? 0)];
        const content = this.content(sheet, cell);
        return content === undefined || style === undefined
          ? []
          : [{ row: cell.row, column: cell.column, content, style }];
      }),
    );
  }

  /** Writes the heights of rows that are too low. @returns How many. */
  fit(sheet: LiveSheet, editor: SheetEditor): number {
    const { columns, rows } = readLayout(sheet.listed.part, sheet.stored, this.ruleFills);
    const needed = neededHeights({ cells: this.cells(sheet), columns });
    const low = (row: StoredRow) => (needed.get(row.row) ?? 0) > (rows.get(row.row)?.size ?? 0);
    const tooLow = sheet.stored.rows.filter(low);
    for (const row of tooLow) {
      const tag = sheet.stored.xml.slice(row.start, row.tagEnd);
      const height = withAttribute(tag, "ht", String(rowPoints(needed.get(row.row) ?? 0)));
      editor.replace(row.start, row.tagEnd, withAttribute(height, "customHeight", "1"));
    }
    return tooLow.length;
  }
}
