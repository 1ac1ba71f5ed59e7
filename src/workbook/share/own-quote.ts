import type { CellData, SheetData } from "../model/workbook-data";
import { TO_AGREE } from "../sheets/parts/doc-rows";
import { type Kept, numbered, withRows, wordsOf } from "./kept-rows";

const AMOUNT = 4;

/** Whose quote it is. */
interface Customer {
  readonly name: string;
  readonly lines: ReadonlySet<string>;
  /** Whether the plan has other customers, whose address must not travel. */
  readonly hasOthers: boolean;
}

/** The rows of the quote by what stands first in them. */
class QuoteRows {
  private readonly labels: ReadonlyMap<number, string>;
  readonly head: number;
  readonly together: number;

  constructor(
    private readonly sheet: SheetData,
    private readonly customer: Customer,
  ) {
    this.labels = new Map(
      sheet.cells.flatMap((cell) => (cell.column === 0 ? [[cell.row, wordsOf(cell)] as const] : [])),
    );
    const rowOf = (word: string) => [...this.labels].find(([, label]) => label === word)?.[0] ?? -1;
    [this.head, this.together] = [rowOf("Line"), rowOf("Together")];
  }

  private isOwn(row: number): boolean {
    const isLine = row > this.head && row < this.together;
    return isLine && this.customer.lines.has(this.labels.get(row) ?? "");
  }

  get kept(): Kept {
    const last = this.sheet.cells.reduce((most, { row }) => Math.max(most, row), 0);
    const rows = Array.from({ length: last + 1 }, (_, row) => row);
    return numbered(rows.filter((row) => row <= this.head || row >= this.together || this.isOwn(row)));
  }

  /** Amounts of the customer's lines that are figures. */
  get amounts(): number[] {
    return this.sheet.cells.flatMap(({ row, column, content }) => {
      const isAmount = column === AMOUNT && this.isOwn(row) && content !== undefined && "value" in content;
      return isAmount && typeof content.value === "number" ? [content.value] : [];
    });
  }

  /** What stands in the last row in place of the sum of all lines; `undefined` where a cell stays. */
  private ofSum(column: number): number | string | undefined {
    const open = this.customer.lines.size - this.amounts.length;
    if (column === AMOUNT) return this.amounts.reduce((sum, amount) => sum + amount, 0);
    if (column !== 1) return undefined;
    return open === 0 ? "" : `${open} of the lines above not counted: still open`;
  }

  /** What stands in a cell instead; `undefined` where it stays. */
  private instead({ row, column }: CellData): number | string | undefined {
    if (row === this.together) return this.ofSum(column);
    const label = row < this.head && column === 1 ? this.labels.get(row) : undefined;
    if (label === "For") return this.customer.name;
    return label === "Address" && this.customer.hasOthers ? TO_AGREE : undefined;
  }

  get cells(): CellData[] {
    return this.sheet.cells.map((cell) => {
      const value = this.instead(cell);
      if (value === undefined) return cell;
      const { content: _, ...empty } = cell;
      return value === "" ? empty : { ...empty, content: { value } };
    });
  }
}

/** The quote with the lines of one customer, their sum, and no other customer's name or address. */
export function ownQuote(sheet: SheetData, customer: Customer): readonly [SheetData, Kept] {
  const rows = new QuoteRows(sheet, customer);
  if (rows.head < 0 || rows.together < rows.head) return [{ ...sheet, cells: [] }, numbered([])];
  return [withRows({ ...sheet, cells: rows.cells }, rows.kept), rows.kept];
}
