import type { Batches } from "./batches-sheet";
import type { Cover } from "./cover-sheet";
import type { CutList } from "./cut-list-sheet";
import type { Lines } from "./lines-sheet";
import { lineColumns } from "./parts/line-columns";
import { checkFormula } from "./parts/remarks";
import {
  type CellOf,
  calcColumn,
  eitherColumn,
  pick,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import type { Route } from "./route-sheet";
import type { StandardRoute } from "./standard-route-sheet";
import type { DataRow } from "./template-data";

export type CostKey =
  | "line"
  | "item"
  | "good"
  | "starts"
  | "steel"
  | "energy"
  | "outside"
  | "routeSetUp"
  | "routeHours"
  | "first"
  | "rate"
  | "model"
  | "hours"
  | "labour"
  | "setUp"
  | "allHours"
  | "setUpCost"
  | "overhead"
  | "belt"
  | "belts"
  | "fitting"
  | "fittings"
  | "packing"
  | "packed"
  | "total"
  | "unit"
  | "margin"
  | "price"
  | "rounded"
  | "ceiling"
  | "check";

export interface CostSources {
  readonly cover: Cover;
  readonly lines: Lines;
  readonly cuts: CutList;
  readonly batches: Batches;
  readonly route: Route;
  readonly standard: StandardRoute;
  /** Address of the most that a line may cost. */
  readonly ceiling: (index: number) => string;
}

const MONEY = { format: "#,##0.00" };

const started = { needs: (at: CellOf<CostKey>) => [at("starts")] };

/** Hours of a line by its own route, else by the standard one: of the set-ups, and of the work on every start. */
function routeHours({ lines, route, standard }: CostSources, at: CellOf<CostKey>, index = 0) {
  const own = (key: "setUp" | "hours") => `SUMIF(${route.block("line")},${at("line")},${route.block(key)})`;
  const hasOwn = `COUNTIF(${route.block("line")},${at("line")})>0`;
  const size = (key: "length" | "width") => lines.at(key, index);
  return {
    setUp: `IF(${hasOwn},${own("setUp")}/60,${standard.setUpHours})`,
    each: `IF(${hasOwn},${own("hours")}-${at("routeSetUp")},${standard.hours(at("starts"), size("length"), size("width"))})`,
  };
}

function workColumns(rows: readonly DataRow[], sources: CostSources): Partial<TableColumns<CostKey>> {
  const { cover } = sources;
  const money = { ...MONEY, ...started };
  const ofCover = (key: "belts" | "fittings" | "packing") => () =>
    `IF(${cover.at(key)}="","",${cover.at(key)})`;
  const given = (column: number) => pick(rows, column);
  return {
    routeSetUp: calcColumn("Route: set-up h", 58, (at) => routeHours(sources, at).setUp, {
      format: "0.0",
      ...started,
    }),
    routeHours: calcColumn("Route: h of all starts", 62, (at, index) => routeHours(sources, at, index).each, {
      format: "0.0",
      ...started,
    }),
    first: eitherColumn("First piece h", 54, given(0), (at) => `${at("routeHours")}/${at("starts")}`, {
      format: "0.00",
      ...started,
    }),
    rate: typedColumn("Learning rate", 62, given(1), { format: "0.00" }),
    model: typedColumn("Learning model", 62, given(2), { words: ["unit", "average"] }),
    hours: calcColumn(
      "Bench hours",
      56,
      (at) =>
        `IF(N(${at("first")})=0,0,BLADE.LEARNING(${at("first")},${at("starts")},IF(${at("rate")}="",1,${at("rate")}),IF(${at("model")}="","unit",${at("model")}),"total"))`,
      { format: "0.0", ...started },
    ),
    labour: calcColumn("Labour", 68, (at) => `${at("hours")}*N(${cover.at("hourRate")})`, money),
    setUp: eitherColumn("Set-up h", 52, given(3), (at) => at("routeSetUp"), { format: "0.0", ...started }),
    allHours: calcColumn("Hours in all", 52, (at) => `${at("hours")}+N(${at("setUp")})`, {
      format: "0.0",
      ...started,
    }),
    setUpCost: calcColumn("Set-up", 60, (at) => `N(${at("setUp")})*N(${cover.at("hourRate")})`, money),
    overhead: calcColumn(
      "Overhead",
      68,
      (at) => `(${at("hours")}+N(${at("setUp")}))*N(${cover.at("overheadRate")})`,
      money,
    ),
    belt: eitherColumn("Belts a start", 54, given(4), ofCover("belts"), MONEY),
    belts: calcColumn("Belts", 60, (at) => `N(${at("belt")})*${at("starts")}`, money),
    fitting: eitherColumn("Fittings a good one", 62, given(5), ofCover("fittings"), MONEY),
    fittings: calcColumn("Fittings", 60, (at) => `N(${at("fitting")})*${at("good")}`, money),
    packing: eitherColumn("Packing a good one", 62, given(6), ofCover("packing"), MONEY),
    packed: calcColumn("Packing", 56, (at) => `N(${at("packing")})*${at("good")}`, money),
  };
}

const PARTS = [
  "steel",
  "energy",
  "outside",
  "labour",
  "setUpCost",
  "overhead",
  "belts",
  "fittings",
  "packed",
] as const;

function priceColumns(
  rows: readonly DataRow[],
  { cover, ceiling }: CostSources,
): Partial<TableColumns<CostKey>> {
  const money = { ...MONEY, ...started };
  const total = (at: CellOf<CostKey>) => PARTS.map((key) => `N(${at(key)})`).join("+");
  return {
    total: calcColumn("Cost of the line", 74, total, money),
    unit: calcColumn("Cost of a good one", 68, (at) => `${at("total")}/${at("good")}`, money),
    margin: eitherColumn(
      "Margin, share of price",
      66,
      pick(rows, 7),
      () => `IF(${cover.at("margin")}="","",${cover.at("margin")})`,
      { format: "0.00" },
    ),
    // Without hours there is no price: a quote must not offer one that leaves the work out.
    price: calcColumn(
      "Price",
      62,
      (at) =>
        `IF((N(${at("labour")})=0)+(${at("margin")}="")>0,"",BLADE.PRICE_AT_MARGIN(${at("unit")},${at("margin")}))`,
      MONEY,
    ),
    rounded: calcColumn(
      "Price rounded",
      66,
      (at) => `IF(${at("price")}="","",BLADE.ROUND_MONEY(${at("price")},${cover.at("priceStep")}))`,
      MONEY,
    ),
    ceiling: calcColumn(
      "Against the ceiling",
      90,
      (at, index) =>
        `IF((N(${ceiling(index)})=0)+(N(${at("rounded")})=0)>0,"",IF(${at("rounded")}>${ceiling(index)},"HIGH","OK"))`,
      { isStatus: true },
    ),
  };
}

/** Hours of the cost and of the route that differ by more than this share are asked about; common practice, no source. */
const HOURS_APART = 0.25;

/** The hours of a line are told twice, by the learning curve and by the steps of its route: they should agree. */
function hoursCheck(at: CellOf<CostKey>): string {
  const steps = `(N(${at("routeHours")})+N(${at("routeSetUp")}))`;
  const own = `(N(${at("hours")})+N(${at("setUp")}))`;
  return checkFormula([
    {
      when: `AND(${steps}>0,ABS(${own}-${steps})>${HOURS_APART}*${steps})`,
      said: `TEXT(${own},"0.0")&" h here, "&TEXT(${steps},"0.0")&" h by the route"`,
    },
    { when: `${own}=0`, said: '"no hours"' },
  ]);
}

/** What each line costs, part by part, and the price that follows. */
export function costsSheet(rows: readonly DataRow[], sources: CostSources): TableSheet<CostKey> {
  const { cover, lines, cuts, batches } = sources;
  const ofBatches = (key: "energy" | "charge", line: string) =>
    `SUMIF(${batches.block("line")},${line},${batches.block(key)})`;
  const columns = {
    ...lineColumns<CostKey>(() => lines, 130),
    good: calcColumn<CostKey>("Good wanted", 58, (_, index) => lines.at("good", index), {
      format: "0",
      needs: (_, index) => [lines.at("good", index)],
    }),
    starts: calcColumn<CostKey>("Starts", 46, (_, index) => lines.at("starts", index), { format: "0" }),
    steel: calcColumn<CostKey>("Steel", 60, (_, index) => cuts.at("cost", index), MONEY),
    energy: calcColumn<CostKey>(
      "Energy",
      54,
      (at) => `${ofBatches("energy", at("line"))}*N(${cover.at("energyPrice")})`,
      MONEY,
    ),
    outside: calcColumn<CostKey>("Outside", 60, (at) => ofBatches("charge", at("line")), MONEY),
    ...workColumns(rows, sources),
    ...priceColumns(rows, sources),
    check: calcColumn<CostKey>("Hours against the route", 170, (at) => hoursCheck(at), {
      isStatus: true,
      wrap: true,
      ...started,
    }),
  } as TableColumns<CostKey>;
  return new TableSheet("Costs", columns, lines.count, {
    title: "Costs: each line, part by part, and its price",
    note: "Rates stand on the cover. Steel is whole bars; energy and outside charges come from the heat batches that the line leads.",
    frozenColumns: 2,
  });
}

export type Costs = TableSheet<CostKey>;
