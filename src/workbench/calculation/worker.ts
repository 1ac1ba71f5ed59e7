import { Calculator, type CellChange } from "../../engine/calculation/calculator";
import type { ChangedResult } from "../../engine/calculation/shown-cells";
import type { CellInput } from "../../engine/cell-value";
import { resultOf } from "../../engine/results";
import type { Rectangle } from "../../formula/addresses";
import type { Answer, HeldSheet, HeldWorkbook, Order, ShownCell, ShownSheet } from "./messages";

/** The worker's side of the page. */
interface Page {
  postMessage(answer: Answer): void;
  addEventListener(kind: "message", listener: (event: { readonly data: Order }) => void): void;
}

const page = self as unknown as Page;

function rowsOf({ cells }: HeldSheet): (CellInput | undefined)[][] {
  const rows: (CellInput | undefined)[][] = [];
  for (const { row, column, content } of cells) {
    rows[row] ??= [];
    (rows[row] as (CellInput | undefined)[])[column] = content;
  }
  return Array.from(rows, (row) => row ?? []);
}

/** The workbook that is kept calculated. */
class Kept {
  private calculator: Calculator | undefined;
  private ids: readonly string[] = [];

  load({ sheets, names, tables }: HeldWorkbook): ShownSheet[] {
    this.calculator?.dispose();
    this.ids = sheets.map(({ id }) => id);
    this.calculator = new Calculator({
      sheets: sheets.map((sheet) => ({ name: sheet.name, rows: rowsOf(sheet) })),
      names,
      tables,
    });
    return this.shown(this.calculator.calculateRest());
  }

  /** Finds out ahead which formulas read which cells: the first edit then need not wait for it. */
  prepare(): void {
    this.calculator?.prepare();
  }

  change(orders: readonly Extract<Order, { kind: "change" }>[]): ShownSheet[] {
    const changes = orders.flatMap(({ sheet, cells }): CellChange[] => {
      const at = this.ids.indexOf(sheet);
      return cells.map(({ row, column, content }) => ({ sheet: at, row, column, content }));
    });
    return this.shown(this.calculator?.change(changes) ?? []);
  }

  private shown(changed: readonly ChangedResult[]): ShownSheet[] {
    const bySheet = this.ids.map((id) => ({ id, cells: [] as ShownCell[] }));
    for (const { sheet, row, column } of changed) {
      const cell = this.calculator?.cellAt(sheet, row, column);
      if (cell === undefined) continue;
      const { formula, filledBy } = cell;
      const isCalculated = formula !== undefined || filledBy !== undefined;
      const format = (cell.s as { n?: { pattern: string } } | undefined)?.n?.pattern;
      bySheet[sheet]?.cells.push({
        row,
        column,
        result: isCalculated ? resultOf(cell) : undefined,
        isFilled: filledBy !== undefined,
        ...(format !== undefined && isCalculated && { format }),
        ...(formula !== undefined && { fills: rectangle(formula.fills) }),
      });
    }
    return bySheet.filter(({ cells }) => cells.length > 0);
  }
}

/** A rectangle of its own: what the calculation keeps holds more than may be sent. */
function rectangle(area: Rectangle | undefined): Rectangle | null {
  if (area === undefined) return null;
  const { row, column, lastRow, lastColumn } = area;
  return { row, column, lastRow, lastColumn };
}

const kept = new Kept();
let waiting: Order[] = [];

/** Takes together what came while the last calculation ran: a newer edit overtakes what an older one would give. */
function work(): void {
  const orders = waiting;
  waiting = [];
  const at = orders.map(({ kind }) => kind).lastIndexOf("load");
  const load = orders[at];
  const sheets = load?.kind === "load" ? kept.load(load.workbook) : [];
  const changes = orders.slice(at + 1).flatMap((order) => (order.kind === "change" ? [order] : []));
  const number = orders.at(-1)?.number ?? 0;
  if (load !== undefined) page.postMessage({ number: load.number, sheets });
  if (load !== undefined) setTimeout(prepare, 0);
  if (changes.length > 0) page.postMessage({ number, sheets: kept.change(changes) });
}

function prepare(): void {
  if (waiting.length === 0) kept.prepare();
}

page.addEventListener("message", ({ data }) => {
  waiting.push(data);
  if (waiting.length === 1) setTimeout(work, 0);
});
