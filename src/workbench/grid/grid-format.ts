import { BooleanNumber, type ICellData, type IStyleData } from "@univerjs/core";
import type { FWorkbook } from "@univerjs/sheets/facade";

/** Letters and number format of the selected cells. */
export class GridFormat {
  constructor(
    private readonly workbook: () => FWorkbook,
    private readonly execute: (command: string, params: object) => void,
  ) {}

  get isBold(): boolean {
    return this.first()?.bl === BooleanNumber.TRUE;
  }

  /** Pattern of the selected cell; empty for one without. */
  get pattern(): string {
    return this.first()?.n?.pattern ?? "";
  }

  toggleBold(): void {
    this.set({ bl: this.isBold ? BooleanNumber.FALSE : BooleanNumber.TRUE });
  }

  /** @param pattern - In the spreadsheet notation; empty for figures as they come. */
  setPattern(pattern: string): void {
    this.set({ n: pattern === "" ? null : { pattern } });
  }

  private first(): IStyleData | null {
    const sheet = this.workbook().getActiveSheet();
    const cell = sheet.getActiveCell() ?? sheet.getActiveRange();
    if (cell === null) return null;
    const data = sheet.getSheet().getCellMatrix().getValue(cell.getRow(), cell.getColumn()) as
      | ICellData
      | undefined;
    return this.workbook().getWorkbook().getStyles().getStyleByCell(data) ?? null;
  }

  /** Cells keep all of their style that is not named. */
  private set(style: IStyleData): void {
    const sheet = this.workbook().getActiveSheet();
    const range = sheet.getActiveRange();
    if (range === null) return;
    this.execute("sheet.command.set-range-values", {
      unitId: this.workbook().getId(),
      subUnitId: sheet.getSheetId(),
      range: range.getRange(),
      value: { s: style },
    });
  }
}
