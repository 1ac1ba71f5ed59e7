import { cellName } from "../../../formula/addresses";
import type { CellModel, SheetModel } from "../../model/sheet-model";

/** Who fills a cell: `type` the smith, `calc` the sheet, `either` the sheet until the smith types over it. */
export type Filled = "type" | "calc" | "either";

export type Row = readonly (CellModel | undefined)[];

/** Number formats of the sheets; a figure shows no more places than it has meaning. */
export const FORMAT = {
  whole: "0",
  tenth: "0.0",
  hundredth: "0.00",
  massPercent: "0.00#",
  money: "#,##0.00",
} as const;

const cell = (role: CellModel["role"], content: number | string, format?: string): CellModel =>
  format === undefined ? { role, content } : { role, content, format };

export const title = (content: string) => cell("title", content);
export const note = (content: string) => cell("note", content);
/**
 * A title or a note that runs over from a frozen column would be torn apart where the sheet is scrolled sideways: it
 * stands over the first column that moves, and moves with it.
 */
export const overScrolled = (frozenColumns: number, head: CellModel): Row => [
  ...Array.from({ length: frozenColumns }, () => undefined),
  head,
];
export const heading = (content: string): CellModel => ({ role: "heading", content, wrap: true });

/** The name in front of a value. */
export const inFront = (content: string): CellModel => ({ ...heading(content), isInFront: true });
export const mark = (filled: Filled) => cell("mark", filled);

/** Filled in by the smith; an empty cell where there is nothing yet. */
export const typed = (content: number | string | null, format?: string) =>
  cell("typed", content ?? "", format);

export const worked = (formula: string, format?: string) => cell("worked", formula, format);

/** An empty cell that a formula beside or above it fills: it only gives the figure its style. */
export const filled = (format?: string) => cell("worked", "", format);

/** Worked out, and long: breaks into lines. Without a formula it waits for one beside it. */
export const words = (formula = ""): CellModel => ({ role: "words", content: formula, wrap: true });

/** Two rows over a table: what stands in each column, and who fills it. */
export function headed(columns: readonly (readonly [heading: string, filled: Filled])[]): [Row, Row] {
  return [columns.map(([text]) => heading(text)), columns.map(([, who]) => mark(who))];
}

/** One figure with its name in front and who fills it behind. */
export function field(name: string, value: CellModel, who: Filled, remark = ""): Row {
  return [inFront(name), value, mark(who), ...(remark === "" ? [] : [note(remark)])];
}

/** Sets a second block beside a first, from a column on. */
export function beside(left: readonly Row[], right: readonly Row[], column: number): Row[] {
  const rows = Math.max(left.length, right.length);
  return Array.from({ length: rows }, (_, index) => {
    const first = left[index] ?? [];
    const second = right[index];
    if (second === undefined) return first;
    return [...Array.from({ length: column }, (_, at) => first[at]), ...second];
  });
}

/** Rows of empty cells in the style of the given ones, for a result as long as it may get. */
export function blankRows(count: number, style: Row): Row[] {
  return Array.from({ length: count }, () => style);
}

/** Formula of a temperature in whole °F beside that in °C: a reader without the add-in sees it too. */
export const inFahrenheit = (celsius: string) => `ROUND(${celsius}*9/5+32,0)`;

/** A length of a cell in mm: a bare figure is in mm, a text such as 3/16 in or 2,4mm says its own unit. */
export const inMillimetres = (cell: string) => `IF(ISNUMBER(${cell}),${cell},BLADE.LENGTH(${cell}))`;

/** The same, 0 for an empty cell and for a text that is no length. */
export const millimetresOr0 = (cell: string) => `N(IFERROR(${inMillimetres(cell)},0))`;

/** Address of a cell that stays the same wherever the formula stands. */
export function fixedName(row: number, column: number): string {
  return cellName(row, column, "both");
}

/** Address of a block that stays the same wherever the formula stands. */
export function fixedBlock(row: number, column: number, rows: number, columns = 1): string {
  return `${fixedName(row, column)}:${fixedName(row + rows - 1, column + columns - 1)}`;
}

type Looks = Pick<SheetModel, "columnWidths" | "rowHeights"> & Partial<SheetModel>;

/** A helper sheet of blocks, one below the other. */
export function helperSheet(name: string, rows: readonly Row[], looks: Looks): SheetModel {
  return {
    name,
    rows,
    frozenRows: 0,
    frozenColumns: 0,
    lines: [0, rows.length - 1],
    wordLists: [],
    statusColumns: [],
    ...looks,
  };
}
