import type { Rectangle } from "../../formula/addresses";
import { styleOfRole } from "../model/role-styles";
import type { CellData, CellStyle, SheetData } from "../model/workbook-data";
import { DATE_FORMAT, FIRST_ROW, HEADINGS } from "../sheets/parts/table-sheet";
import { planWords, rowKey } from "./copy-number";
import {
  ANSWERED_BY,
  ANSWERED_ON,
  type AnswerField,
  type AnswerForm,
  type AnswerKind,
  ASKED_OF,
  fieldsOf,
  KEY,
  USUAL_TIME,
} from "./forms";
import type { AskedLine, Plan } from "./lines-asked";

/** What a copy's tables of answers are made of. */
export interface AnswerWishes {
  readonly plan: Plan;
  readonly number: string;
  /** By when an answer is wanted, as the sender says it. */
  readonly by: string;
  /** Whom the copy is made for by name; empty where it is for all of a kind. */
  readonly whom: string;
}

const FORMATS: Readonly<Partial<Record<AnswerKind, string>>> = {
  money: "#,##0.00",
  date: DATE_FORMAT,
  temperature: "0",
  hardness: "0.0",
  "mass %": "0.00#",
  count: "0",
};

const KEY_WIDTH = 132;
/** The key and what it stands for: they stay in sight, and stand on every page. */
const REPEATED = 2;
/** The row of the two cells that say who answered and when. */
const HEAD = 2;

const answerStyle = (format?: string): CellStyle => ({
  ...styleOfRole({ role: "typed", wrap: true, ...(format === undefined ? {} : { format }) }),
  isUnlocked: true,
});
const TOLD = styleOfRole({ role: "words", wrap: true });
const HEADING = styleOfRole({ role: "heading", wrap: true });
/** A name takes as many cells as it needs; wrapped in a narrow column it would make its row five lines high. */
const NAMED = styleOfRole({ role: "words" });

const text = (row: number, column: number, value: string, style: CellStyle, note?: string): CellData => ({
  row,
  column,
  style,
  content: { value },
  ...(note === undefined ? {} : { note }),
});

function request(by: string): string {
  const until = by === "" ? `, please ${USUAL_TIME}` : ` by ${by}`;
  return `Fill in the shaded cells${until}, and send this file back; the table as CSV or pasted into a mail will do. Leave the keys as they are.`;
}

/** Pixels that a name and a day need to be read whole. */
const [NAME_WIDTH, DAY_WIDTH] = [200, 84];
/** Pixels of a letter, and those that a cell keeps free beside its words. */
const [LETTER_WIDTH, MARGINS] = [7, 24];

interface Width {
  readonly width: number;
}

/** The columns from one on that are together so wide, as one cell. */
function wideCell(columns: readonly Width[], column: number, pixels: number): Rectangle {
  let [lastColumn, width] = [column, columns[column]?.width ?? 0];
  while (width < pixels && lastColumn < columns.length - 1) {
    lastColumn += 1;
    width += columns[lastColumn]?.width ?? 0;
  }
  return { row: HEAD, lastRow: HEAD, column, lastColumn };
}

/** Cells of the head beside their labels: who answered and when, both to be filled in, and who was asked. */
function headAreas(columns: readonly Width[], whom: string) {
  const name = wideCell(columns, 1, NAME_WIDTH);
  const day = wideCell(columns, name.lastColumn + 2, DAY_WIDTH);
  const asked = wideCell(columns, day.lastColumn + 2, whom.length * LETTER_WIDTH + MARGINS);
  return { name, day, asked };
}

const areaCells = ({ column, lastColumn }: Rectangle, style: CellStyle): CellData[] =>
  Array.from({ length: lastColumn - column + 1 }, (_, at) => ({ row: HEAD, column: column + at, style }));

function headCells(
  { paper }: AnswerForm,
  { plan, by, whom }: AnswerWishes,
  { name, day, asked }: ReturnType<typeof headAreas>,
): CellData[] {
  const currency = plan.currency === "" ? "" : ` Prices in ${plan.currency}.`;
  return [
    // Right of what stands on every page, where a second page would show no more than its first words.
    text(
      0,
      REPEATED,
      `Your answer to our ${paper.toLowerCase()}: ${planWords(plan.name)}`,
      styleOfRole({ role: "title" }),
    ),
    text(1, REPEATED, request(by) + currency, styleOfRole({ role: "note" })),
    text(HEAD, 0, ANSWERED_BY, HEADING),
    ...areaCells(name, answerStyle()),
    text(HEAD, name.lastColumn + 1, ANSWERED_ON, HEADING),
    ...areaCells(day, answerStyle(DATE_FORMAT)),
    ...(whom === ""
      ? []
      : [
          text(HEAD, asked.column - 1, ASKED_OF, HEADING),
          text(HEAD, asked.column, whom, NAMED),
          ...areaCells({ ...asked, column: asked.column + 1 }, NAMED),
        ]),
  ];
}

function lineCells(
  form: AnswerForm,
  fields: readonly AnswerField[],
  number: string,
  lines: readonly AskedLine[],
) {
  const first = form.told.length + 1;
  return lines.flatMap(({ line, told }, at): CellData[] => {
    const row = FIRST_ROW + at;
    const known = form.told.map(({ heading, format }, column): CellData => {
      const value = told[heading] ?? "";
      const style = styleOfRole({ role: "words", wrap: true, ...(format === undefined ? {} : { format }) });
      return { row, column: column + 1, style, ...(value === "" ? {} : { content: { value } }) };
    });
    const open = fields.map(
      ({ kind }, column): CellData => ({ row, column: first + column, style: answerStyle(FORMATS[kind]) }),
    );
    return [text(row, 0, rowKey(form.mark, number, line), TOLD), ...known, ...open];
  });
}

/** The sheet on which somebody answers: locked but for the cells that are asked. */
export function answerSheet(form: AnswerForm, lines: readonly AskedLine[], wishes: AnswerWishes): SheetData {
  const fields = fieldsOf(form, wishes.plan.elements);
  const columns = [{ heading: KEY, width: KEY_WIDTH }, ...form.told, ...fields];
  const head = headAreas(columns, wishes.whom);
  const first = form.told.length + 1;
  const lastRow = FIRST_ROW + lines.length - 1;
  const headings = columns.map(({ heading }, column) => {
    const field = fields[column - first];
    return text(HEADINGS, column, heading, HEADING, field?.note);
  });
  return {
    name: form.name,
    isHidden: false,
    isProtected: true,
    cells: [...headCells(form, wishes, head), ...headings, ...lineCells(form, fields, wishes.number, lines)],
    columns: new Map(columns.map(({ width }, column) => [column, { size: width }])),
    rows: new Map([[0, { size: 28 }]]),
    frozenRows: FIRST_ROW,
    frozenColumns: REPEATED,
    merged: [head.name, head.day, ...(wishes.whom === "" ? [] : [head.asked])].filter(
      ({ column, lastColumn }) => lastColumn > column,
    ),
    offers: fields.flatMap(({ words }, at) => {
      const column = first + at;
      return words === undefined
        ? []
        : [{ areas: [{ row: FIRST_ROW, lastRow, column, lastColumn: column }], words }];
    }),
    colors: [],
    hidesGridLines: true,
    print: { landscape: true, isPaper: true, repeatedRows: [HEADINGS, HEADINGS], repeatedColumns: REPEATED },
  };
}
