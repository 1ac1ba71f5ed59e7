import { cellName } from "../../../formula/addresses";
import { type AnswerTable, answerTables, gridOf, textIn } from "../../answers/answer-tables";
import { KEY } from "../../answers/forms";
import type { Values } from "../values";

type Cells = Values extends ReadonlyMap<string, infer Sheet> ? Sheet : never;

/** A table of answers with the name of the sheet it stands on. */
export interface PlacedTable {
  readonly sheet: string;
  readonly table: AnswerTable;
}

/** All tables of answers of a workbook. */
export const tablesIn = (values: Values): PlacedTable[] =>
  [...values].flatMap(([sheet, cells]) => answerTables(gridOf(cells)).map((table) => ({ sheet, table })));

const lineKey = ({ key }: AnswerTable["rows"][number]) => `${key.mark}-${key.number}/${key.line}`;

/** What a found table tells, in the places in which the made one tells it; answers are left out. */
function told(made: AnswerTable, cells: Cells, found: AnswerTable | undefined): Cells {
  const rows = new Map(found?.rows.map((row) => [lineKey(row), row]));
  const aligned = new Map([...cells].filter(([name]) => !isBelow(name, made.headingRow)));
  for (const row of made.rows) {
    const other = rows.get(lineKey(row));
    if (other === undefined) continue;
    for (const heading of [KEY, ...made.form.told.map((field) => field.heading)]) {
      const [column, content] = [made.columns.get(heading), other.cells.get(heading)];
      if (column !== undefined && content !== undefined && textIn(content) !== "")
        aligned.set(cellName(row.row, column), content);
    }
  }
  return aligned;
}

const isBelow = (name: string, row: number) => Number(name.replace(/^[A-Z]+/, "")) > row + 1;

/**
 * The values of a copy with its tables of answers as they were made: rows in their order, columns and names of sheets
 * in their place, without the answers. What is told there can then be compared cell by cell.
 */
export function alignedAnswers(made: Values, found: Values): Values {
  const [ours, theirs] = [tablesIn(made), tablesIn(found)];
  const placed = new Set(theirs.map(({ sheet }) => sheet));
  const others = [...found].filter(([sheet]) => !placed.has(sheet));
  const tables = ours.map(({ sheet, table }) => {
    const other = theirs.find(({ table: { form } }) => form.mark === table.form.mark)?.table;
    return [sheet, told(table, made.get(sheet) ?? new Map(), other)] as const;
  });
  return new Map([...others, ...tables]);
}

/** How many cells of the tables hold an answer. */
export function answersIn(tables: readonly PlacedTable[]): number {
  const asked = ({ form, rows }: AnswerTable) => {
    const known = new Set([KEY, ...form.told.map(({ heading }) => heading)]);
    return rows.flatMap(({ cells }) =>
      [...cells].filter(([heading, held]) => !known.has(heading) && textIn(held) !== ""),
    );
  };
  return tables.reduce((sum, { table }) => sum + asked(table).length, 0);
}
