import { describe, expect, test } from "vitest";
import type { CellModel, SheetModel, WorkbookModel } from "../../src/workbook/model/sheet-model";
import {
  type RowOrder,
  reorderedRows,
  type TableRows,
  tablesTogether,
} from "../../src/workbook/rows/reordered-rows";
import { sortedBy, withoutRow, withRowAt } from "../../src/workbook/rows/row-orders";
import { FIRST_ROW, HEADINGS } from "../../src/workbook/sheets/parts/table-sheet";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";

type Content = CellModel["content"];

function rowsOf(sheet: SheetModel): TableRows<Content> | undefined {
  const table = sheet.tables?.find(({ row }) => row === HEADINGS);
  if (table === undefined) return undefined;
  const at = (row: number, column: number) => {
    const content = sheet.rows[row]?.[column]?.content;
    if (content === undefined || content === "") return undefined;
    return typeof content === "string" && content.startsWith("=")
      ? { formula: content, data: content }
      : { data: content };
  };
  return {
    sheet: sheet.name,
    first: FIRST_ROW,
    last: FIRST_ROW + table.rows - 2,
    columns: table.columns,
    at,
  };
}

const tablesOf = ({ sheets }: WorkbookModel) => sheets.flatMap((sheet) => rowsOf(sheet) ?? []);

/** What the tables that go with one hold afterwards: by sheet, row and column. */
function after(model: WorkbookModel, name: string, orderOf: (count: number) => RowOrder) {
  const tables = tablesOf(model);
  const asked = tables.find(({ sheet }) => sheet === name);
  if (asked === undefined) throw new Error(`no table ${name}`);
  const together = tablesTogether(tables, asked, (content) => content === "");
  const moved = reorderedRows(together, orderOf(asked.last - asked.first + 1));
  const held = new Map(moved.map((cell) => [`${cell.sheet} ${cell.row} ${cell.column}`, cell]));
  const contentAt = (table: TableRows<Content>, row: number, column: number): Content | undefined => {
    const cell = held.get(`${table.sheet} ${row} ${column}`);
    return cell === undefined ? table.at(row, column)?.data : (cell.formula ?? cell.data);
  };
  return { together, contentAt };
}

const blank = planningTemplate();
const MARKS = 2;
const FILLED = 6;

/** The plan with a text of its own in each typed cell of the first lines. */
const filled: WorkbookModel = {
  ...blank,
  sheets: blank.sheets.map((sheet) => ({
    ...sheet,
    rows: sheet.rows.map((cells, row) =>
      row < FIRST_ROW || row >= FIRST_ROW + FILLED || rowsOf(sheet) === undefined
        ? cells
        : cells.map((cell, column) =>
            cell?.content === "" && sheet.rows[MARKS]?.[column]?.content === "type"
              ? { ...cell, content: `${sheet.name} ${row} ${column}` }
              : cell,
          ),
    ),
  })),
};

describe("a row put between the lines", () => {
  const PLACE = 2;
  const { together, contentAt } = after(filled, "Lines", (count) => withRowAt(count, PLACE));
  const places = together.flatMap((table) =>
    Array.from({ length: table.columns }, (_, column) => ({
      column,
      table,
      own: tablesOf(blank).find(({ sheet }) => sheet === table.sheet),
    })),
  );

  test("takes along every sheet that has a row a line", () => {
    const names = together.map(({ sheet }) => sheet);
    for (const name of ["Lines", "Recipe", "Cut list", "Costs", "Enquiry"]) expect(names).toContain(name);
    // Readings have rows of their own, not one a line.
    expect(names).not.toContain("Hardness readings");
  });

  test("is blank, and what was typed below moved down by one", () => {
    for (const { table, column, own } of places) {
      const isTyped = own?.at(FIRST_ROW, column)?.formula === undefined;
      const now = Array.from({ length: FILLED + 1 }, (_, at) => contentAt(table, FIRST_ROW + at, column));
      const before = Array.from({ length: FILLED }, (_, at) => table.at(FIRST_ROW + at, column)?.data);
      if (isTyped) expect(now).toEqual([...before.slice(0, PLACE), undefined, ...before.slice(PLACE)]);
    }
  });

  test("has its formulas, and those of the other rows stay what they are in the blank plan", () => {
    for (const { table, column, own } of places)
      for (let row = FIRST_ROW; row <= FIRST_ROW + FILLED; row += 1) {
        const formula = own?.at(row, column)?.formula;
        if (formula !== undefined)
          expect(contentAt(table, row, column), `${table.sheet} ${row} ${column}`).toBe(formula);
      }
  });
});

describe("orders of rows", () => {
  test("a row taken out is the same as none put in", () => {
    expect(withRowAt(5, 2)).toEqual([0, 1, undefined, 2, 3]);
    expect(withoutRow(5, 2)).toEqual([0, 1, 3, 4, undefined]);
  });

  test("K2 stands before K10, figures before words, blanks and blank rows last both ways", () => {
    const values = ["K10", "", 7, "K2", "", 5];
    const isFilled = (at: number) => at !== 4;
    expect(sortedBy(values, isFilled, "up")).toEqual([5, 2, 3, 0, 1, 4]);
    expect(sortedBy(values, isFilled, "down")).toEqual([0, 3, 2, 5, 1, 4]);
  });
});

describe("formulas", () => {
  const table = (formulas: readonly (string | number | undefined)[]): TableRows<Content> => ({
    sheet: "T",
    first: 4,
    last: 4 + formulas.length - 1,
    columns: 1,
    at: (row) => {
      const content = formulas[row - 4];
      if (content === undefined) return undefined;
      return typeof content === "string" ? { formula: content, data: content } : { data: content };
    },
  });
  const contents = (formulas: readonly (string | number | undefined)[], order: RowOrder) => {
    const moved = new Map(reorderedRows([table(formulas)], order).map((cell) => [cell.row - 4, cell]));
    return formulas.map((own, at) => {
      const cell = moved.get(at);
      return cell === undefined ? own : (cell.formula ?? cell.data);
    });
  };

  test("a running total stays what it is in every row", () => {
    const totals = ["=SUM($A$5:$A5)", "=SUM($A$5:$A6)", "=SUM($A$5:$A7)"];
    expect(contents(totals, [2, 0, 1])).toEqual(totals);
  });

  test("a formula of one's own goes with its row and reads its new one", () => {
    const own = ["=$B5*2", "=$B6*3+'T'!C$6+U!C6", "=$B7*2", "=$B8*2"];
    expect(contents(own, [0, 2, 1, 3])).toEqual(["=$B5*2", "=$B6*2", "=$B7*3+'T'!C$7+U!C6", "=$B8*2"]);
  });

  test("a figure typed over a formula goes along, and the formula comes back in its place", () => {
    expect(contents(["=$B5*2", 9, "=$B7*2"], [1, 0, 2])).toEqual([9, "=$B6*2", "=$B7*2"]);
  });

  test("a number that counts the rows goes on counting, also where a name was typed over one", () => {
    const names = ['="S1"', "rack 4", '="S3"', '="S4"'];
    expect(contents(names, [undefined, 0, 1, 2])).toEqual(['="S1"', '="S2"', "rack 4", '="S4"']);
  });

  test("formulas that differ from row to row go with their rows as they are", () => {
    expect(contents(["=U!A9", "=V!A2", "=W!A7"], [2, 1, 0])).toEqual(["=W!A7", "=V!A2", "=U!A9"]);
  });
});
