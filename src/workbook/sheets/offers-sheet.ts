import type { SheetModel } from "../model/sheet-model";
import type { Cover } from "./cover-sheet";
import type { CutList } from "./cut-list-sheet";
import { listedWords } from "./parts/listed-words";
import {
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

const itemsShown = (offers: number) => Math.min(MAX_ITEMS, offers);
const mixRows = (offers: number) => itemsShown(offers) + MIX_ROWS;
const mixBlock = (offers: number, column: number) =>
  `'${OFFER_SHEETS.best}'!${fixedBlock(MIX_FIRST, column, mixRows(offers))}`;

/** A cell of a table that a function answers with; a dash beyond its end and for what is empty on purpose. */
function cellOf(call: string, row: number, column: number, begun: string): string {
  const found = `INDEX(${call},${row},${column})`;
  const shown = `IF(${found}="","${NONE}",${found})`;
  // Where the whole table is refused its first cell says why.
  const told = row === 1 && column === 1 ? shown : `IFERROR(${shown},"${NONE}")`;
  return `=IF(${begun}=0,"",${told})`;
}

const cellIn = (content: string, format?: string) =>
  format === undefined ? words(content) : worked(content, format);

/** The offers side by side and the cheapest mix of suppliers for what the cut list still has to buy. */
export function bestOfferSheet(offers: Offers, { cover, cuts }: Sources): SheetModel {
  const tables = `${cuts.headed("grade", "rack")},${offers.headed(READ.first, READ.last)}`;
  const cutting = `${cover.at("kerf")},${cover.at("trim")}`;
  const most = fixedName(MOST, 1);
  const begun = `COUNTA(${offers.block("price")})`;
  const best = `BLADE.BEST_OFFER(${tables},${most},${cutting})`;
  const compared = `BLADE.OFFERS_COMPARED(${tables},${cutting})`;
  const items = itemsShown(offers.count);
  const mix = Array.from(
    { length: mixRows(offers.count) },
    (_, row): Row =>
      MIX.map(([, format], column) => cellIn(cellOf(best, row + 1, column + 1, begun), format)),
  );
  const side = Array.from(
    { length: items + CHARGE_ROWS },
    (_, row): Row =>
      Array.from({ length: FIXED_COLUMNS + SUPPLIERS }, (_, column) =>
        cellIn(
          cellOf(compared, row + 1, column + 1, begun),
          column < FIXED_COLUMNS || row === 0 ? undefined : MONEY,
        ),
      ),
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
    columnWidths: [110, 150, 130, 90, 96, 90, 90, 96, 96],
    rowHeights: { 0: 28 },
    print: { landscape: true },
  });
}
