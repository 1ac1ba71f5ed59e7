import type { CellModel, SheetModel } from "../model/sheet-model";
import type { Cover } from "./cover-sheet";
import type { CutList } from "./cut-list-sheet";
import { listedWords } from "./parts/listed-words";
import {
  beside,
  field,
  fixedBlock,
  fixedName,
  heading,
  helperSheet,
  mark,
  note,
  type Row,
  title,
  typed,
  words,
  worked,
} from "./parts/sheet-parts";
import {
  calcColumn,
  pick,
  STEEL_WIDTH,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import type { Steels } from "./steels-sheet";
import type { DataRow } from "./template-data";

/** Sheets that hold what suppliers ask: no copy that goes out has them. */
export const OFFER_SHEETS = { answers: "Offers", best: "Best offer" } as const;

export type OfferKey =
  | "supplier"
  | "steel"
  | "width"
  | "thickness"
  | "price"
  | "per"
  | "bar"
  | "inStock"
  | "minimum"
  | "freight"
  | "week"
  | "heat"
  | "remarks"
  | "kilogram"
  | "against"
  | "taken";

const MONEY = "#,##0.00";

/** The columns that the functions read; headings are theirs. */
const READ = { first: "supplier", last: "week" } as const;

interface Sources {
  readonly cover: Cover;
  readonly cuts: CutList;
  readonly steels: Steels;
}

/** What suppliers answered, a row an offer, typed or brought in; beside it what it comes to. */
export function offersSheet(
  rows: readonly DataRow[],
  { steels }: Sources,
  count: number,
): TableSheet<OfferKey> {
  const given = (column: number) => pick(rows, column);
  const money = { format: MONEY };
  const columns: TableColumns<OfferKey> = {
    supplier: typedColumn("Supplier", 136, given(0), { wrap: true }),
    steel: typedColumn("Steel", STEEL_WIDTH, given(1), { words: listedWords("STEELS") }),
    width: typedColumn("Width mm", 56, given(2), { format: "0.0" }),
    thickness: typedColumn("Thickness mm", 70, given(3), { format: "0.0" }),
    price: typedColumn("Price", 58, given(4), money),
    per: typedColumn("per", 46, given(5), { words: ["kg", "bar", "m", "lb", "ft"] }),
    bar: typedColumn("Bar length mm", 76, given(6), { format: "0" }),
    inStock: typedColumn("Bars in stock", 54, given(7), { format: "0" }),
    minimum: typedColumn("Minimum charge", 76, given(8), money),
    freight: typedColumn("Freight", 58, given(9), money),
    week: typedColumn("Week", 76, given(10)),
    heat: typedColumn("Heat offered", 76, given(11)),
    remarks: typedColumn("Supplier's remarks", 180, given(12), { wrap: true }),
    kilogram: calcColumn(
      "Comes to, a kg",
      62,
      (at) => {
        const section = `(${at("width")}*${at("thickness")}*BLADE.DENSITY(${at("steel")})/1000000)`;
        const each = (mm: string) => `${at("price")}/(${section}*${mm})`;
        const cases = [
          `IF(${at("per")}="lb",${at("price")}/0.45359237`,
          `IF(${at("per")}="m",${each("1000")}`,
          `IF(${at("per")}="ft",${each("304.8")}`,
          `IF(${at("per")}="bar",${each(at("bar"))},${at("price")}`,
        ];
        return `IFERROR(${cases.join(",")}${")".repeat(cases.length)},"CHECK")`;
      },
      { ...money, needs: (at) => [at("steel"), at("price"), at("width"), at("thickness")] },
    ),
    against: calcColumn(
      "Against the price of before",
      76,
      (at) =>
        `IFERROR(${at("kilogram")}/INDEX(${steels.block("price")},MATCH(${at("steel")},${steels.block("grade")},0))-1,"no price")`,
      { format: "+0 %;-0 %;0 %", needs: (at) => [at("kilogram")] },
    ),
    taken: calcColumn(
      "In the cheapest mix",
      76,
      (at) =>
        `IF(COUNTIFS(${mixBlock(count, 0)},${at("steel")},${mixBlock(count, 2)},${at("supplier")})>0,"yes","no")`,
      { needs: (at) => [at("steel")] },
    ),
  };
  return new TableSheet(OFFER_SHEETS.answers, columns, count, {
    title: "Offers: what suppliers answered, a row an offer",
    note: 'Private: no copy that goes out has this sheet. Minimum charge and freight once a supplier. Several bar lengths: "3000; 6000", or a row each.',
    frozenColumns: 2,
  });
}

export type Offers = TableSheet<OfferKey>;

/** Suppliers that stand side by side, and rows that a best mix and a comparison have beyond the lines. */
const SUPPLIERS = 6;
const FIXED_COLUMNS = 3;
const CHARGE_ROWS = 7;
const MIX_ROWS = 3 * SUPPLIERS + 2;
const SIDE_COLUMNS = FIXED_COLUMNS + SUPPLIERS;
/** A plan of more lines shows so many steels and sections. */
const MAX_ITEMS = 40;
const NONE = "–";

const MOST = 2;
const MIX_TITLE = 4;
const MIX_FIRST = MIX_TITLE + 3;
/** Of BEST_OFFER: steel, section, supplier, bars, bar length, cost, kg, week. */
const MIX = [
  ["Steel", undefined],
  ["Section", undefined],
  ["Supplier", undefined],
  ["Bars", "0"],
  ["Bar length mm", "0"],
  ["Cost", MONEY],
  ["kg", "0.0"],
  ["Delivery", undefined],
] as const;

const WIDTHS = [110, 150, 130, 90, 96, 90, 90, 96, 96];
/** What the functions answer stands behind the columns in sight, a blank column before each. */
const BEST_COLUMN = SIDE_COLUMNS + 1;
const COMPARED_COLUMN = BEST_COLUMN + MIX.length + 1;
const HIDDEN = Array.from({ length: COMPARED_COLUMN }, (_, at) => SIDE_COLUMNS + at);

const itemsShown = (offers: number) => Math.min(MAX_ITEMS, offers);
const mixRows = (offers: number) => itemsShown(offers) + MIX_ROWS;
const mixBlock = (offers: number, column: number) =>
  `'${OFFER_SHEETS.best}'!${fixedBlock(MIX_FIRST, column, mixRows(offers))}`;

/** What a function answers, in hidden columns: one formula fills them, so that the function is asked once. */
interface Answer {
  readonly call: string;
  /** Place of its first cell. */
  readonly row: number;
  readonly column: number;
  /** As much of it as the table in sight shows. */
  readonly rows: number;
  readonly columns: number;
}

const numbers = (count: number, between: string) =>
  `{${Array.from({ length: count }, (_, at) => at + 1).join(between)}}`;

/**
 * Dashes beyond the end of the answer and for errors in it, empty texts until a price is typed: the formula always
 * fills the same cells. LibreOffice keeps a formula that fills cells at the size that it had when the file was
 * written, and what is added later would be cut off.
 */
function answerCell({ call, rows, columns }: Answer, begun: string): CellModel {
  const [down, across] = [numbers(rows, ";"), numbers(columns, ",")];
  return worked(`=IF(${begun}*${down}*${across}=0,"",IFERROR(INDEX(${call},${down},${across}),"${NONE}"))`);
}

/** The cell in sight of an answer: a dash for what is empty on purpose too, and where nobody knows the functions. */
function cellOf(
  { call, row, column, rows, columns }: Answer,
  [down, across]: readonly [row: number, column: number],
): string {
  const first = fixedName(row, column);
  // Where the whole table is refused its first cell says why: the function is asked again for its sentence alone.
  if (down === 0 && across === 0) return `=IF(${first}="${NONE}",INDEX(${call},1,1),${first})`;
  const found = `INDEX(${fixedBlock(row, column, rows, columns)},${down + 1},${across + 1})`;
  return `=IFERROR(IF(${first}="","",IF(${found}="","${NONE}",${found})),"${NONE}")`;
}

/** The rows of an answer in sight, the answer itself behind the first of them. */
function answerRows(answer: Answer, begun: string, formatOf: FormatOf): Row[] {
  const { rows, columns, column } = answer;
  const inSight = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_x, at) => cellIn(cellOf(answer, [row, at]), formatOf(row, at))),
  );
  return beside(inSight, [[answerCell(answer, begun)]], column);
}

type FormatOf = (row: number, column: number) => string | undefined;

const cellIn = (content: string, format?: string) =>
  format === undefined ? words(content) : worked(content, format);

/** The offers side by side and the cheapest mix of suppliers for what the cut list still has to buy. */
export function bestOfferSheet(offers: Offers, { cover, cuts }: Sources): SheetModel {
  const tables = `${cuts.headed("grade", "rack")},${offers.headed(READ.first, READ.last)}`;
  const cutting = `${cover.at("kerf")},${cover.at("trim")}`;
  const most = fixedName(MOST, 1);
  const begun = `COUNTA(${offers.block("price")})`;
  const best: Answer = {
    call: `BLADE.BEST_OFFER(${tables},${most},${cutting})`,
    row: MIX_FIRST,
    column: BEST_COLUMN,
    rows: mixRows(offers.count),
    columns: MIX.length,
  };
  const compared: Answer = {
    call: `BLADE.OFFERS_COMPARED(${tables},${cutting})`,
    row: MIX_FIRST + best.rows + 2,
    column: COMPARED_COLUMN,
    rows: itemsShown(offers.count) + CHARGE_ROWS,
    columns: SIDE_COLUMNS,
  };
  const mix = answerRows(best, begun, (_, column) => MIX[column]?.[1]);
  const side = answerRows(compared, begun, (row, column) =>
    column < FIXED_COLUMNS || row === 0 ? undefined : MONEY,
  );
  const rows: Row[] = [
    [title("Best offer: the cheapest mix of suppliers, and all offers side by side")],
    [
      note(
        "Private. One steel and section comes from one supplier. The price taken and the supplier are then typed on Steel and heats.",
      ),
    ],
    field("Suppliers at most", typed(null, "0"), "type", "empty: as many as pay"),
    [],
    [title("The cheapest mix")],
    MIX.map(() => mark("calc")),
    MIX.map(([text]) => heading(text)),
    ...mix,
    [],
    [title("Side by side: cost of what is needed from each")],
    ...side,
  ];
  return helperSheet(OFFER_SHEETS.best, rows, {
    columnWidths: [...WIDTHS, ...HIDDEN.map(() => 96)],
    hiddenColumns: HIDDEN,
    rowHeights: { 0: 28 },
    print: {
      landscape: true,
      area: { row: 0, column: 0, lastRow: rows.length - 1, lastColumn: SIDE_COLUMNS - 1 },
    },
  });
}
