import type { CellInput } from "../../src/engine/cell-value";
import type { SheetInput, WorkbookInput } from "../../src/engine/workbook-input";
import type { Example, ExampleArgument, WorksheetFunction } from "../../src/functions/declare";
import { examplesOf } from "../../src/functions/examples";

/** One example with the sheet on which its formula stands in A1. */
export interface PlacedExample {
  readonly fn: WorksheetFunction;
  readonly example: Example;
  readonly sheet: string;
  readonly formula: string;
}

type Cell = string | number | null;

const DATA = "Data";

function letters(column: number): string {
  const rest = Math.floor(column / 26) - 1;
  return (rest < 0 ? "" : letters(rest)) + String.fromCharCode(65 + (column % 26));
}

/** Ranges named in examples, written beside each other on one sheet. */
class DataSheet {
  private readonly rows: (CellInput | undefined)[][] = [];
  private width = 0;

  /** Writes a range and gives its address. */
  place(range: readonly (readonly Cell[])[]): string {
    const left = this.width;
    const columns = Math.max(...range.map((row) => row.length));
    range.forEach((row, r) => {
      const line = this.rows[r] ?? [];
      this.rows[r] = line;
      row.forEach((cell, c) => {
        line[left + c] = cell === null ? undefined : { value: cell };
      });
    });
    this.width += columns + 1;
    return `${DATA}!${letters(left)}1:${letters(left + columns - 1)}${range.length}`;
  }

  sheet(): SheetInput {
    return { name: DATA, rows: this.rows.map((row) => Array.from(row)) };
  }
}

function rowsOf(argument: readonly Cell[] | readonly (readonly Cell[])[]): (readonly Cell[])[] {
  return argument.map((row) => (Array.isArray(row) ? (row as readonly Cell[]) : [row as Cell]));
}

function argumentText(argument: ExampleArgument, data: DataSheet): string {
  if (argument === null) return "";
  if (typeof argument === "number") return String(argument);
  if (typeof argument === "string") return `"${argument.replaceAll('"', '""')}"`;
  return data.place(rowsOf(argument as readonly Cell[] | readonly (readonly Cell[])[]));
}

/** A workbook with every example of the functions, one sheet each, ranges on a sheet of their own. */
export function exampleWorkbook(functions: readonly WorksheetFunction[]): {
  readonly workbook: WorkbookInput;
  readonly placed: readonly PlacedExample[];
} {
  const data = new DataSheet();
  const placed = functions.flatMap((fn) =>
    examplesOf(fn).map((example, position): PlacedExample => {
      const args = example.given.map((argument) => argumentText(argument, data));
      return {
        fn,
        example,
        sheet: `${fn.name} ${position + 1}`,
        formula: `=BLADE.${fn.name}(${args.join(",")})`,
      };
    }),
  );
  const sheets = placed.map(({ sheet, formula }) => ({ name: sheet, rows: [[{ formula }]] }));
  return { workbook: { sheets: [...sheets, data.sheet()] }, placed };
}
