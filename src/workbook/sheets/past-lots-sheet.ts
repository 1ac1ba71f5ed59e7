import type { Batches } from "./batches-sheet";
import type { Cover } from "./cover-sheet";
import type { Lines } from "./lines-sheet";
import {
  type CellOf,
  calcColumn,
  pick,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import type { Shipping } from "./shipping-sheet";
import type { DataRow } from "./template-data";

export type LotKey =
  | "run"
  | "item"
  | "started"
  | "good"
  | "hours"
  | "loads"
  | "energy"
  | "yield"
  | "floor"
  | "each"
  | "perLoad"
  | "all"
  | "allFloor";

/** Chance that the true yield is above the floor. */
const CONFIDENCE = 0.95;

interface Sources {
  readonly cover: Cover;
  readonly lines: Lines;
  readonly batches: Batches;
  readonly shipping: Shipping;
}

/**
 * The lots of this run, a row a line that was sent: what was begun and what went out good, until someone types over
 * it. Hours and metered kWh are known to the shop alone.
 */
function thisRun({ cover, lines, batches, shipping }: Sources) {
  const each = (formula: (line: string, index: number) => string) =>
    Array.from({ length: lines.count }, (_, index) => {
      const line = lines.at("line", index);
      const sent = `COUNTIFS(${shipping.block("line")},${line},${shipping.block("date")},">0")`;
      return `=IF(OR(${line}="",${sent}=0),"",${formula(line, index)})`;
    });
  const loads = (line: string) =>
    `SUMIFS(${batches.block("loads")},${batches.block("line")},${line},${batches.block("where")},"in-house")`;
  return {
    run: each(() => `${cover.at("run")}&""`),
    item: each((_, index) => lines.at("item", index)),
    started: each((_, index) => lines.at("starts", index)),
    good: each(
      (line) =>
        `SUMIFS(${shipping.block("pieces")},${shipping.block("line")},${line},${shipping.block("date")},">0")`,
    ),
    loads: each((line) => `IF(${loads(line)}=0,"",${loads(line)})`),
  };
}

/** What past lots took and gave: the honest source for the next quote. */
export function pastLotsSheet(rows: readonly DataRow[], sources: Sources, count: number): TableSheet<LotKey> {
  const ofRun = thisRun(sources);
  const given = (column: number, key?: keyof typeof ofRun) => [
    ...pick(rows, column),
    ...(key === undefined ? [] : ofRun[key]),
  ];
  const first = 5;
  const column = (letters: string) => `$${letters}$${first}:$${letters}$${first + count - 1}`;
  const ofItem = (letters: string, at: CellOf<LotKey>) =>
    `SUMIF(${column("B")},${at("item")},${column(letters)})`;
  const counted = (at: CellOf<LotKey>, formula: string) =>
    `IF(OR(N(${at("started")})=0,${at("good")}=""),"",${formula})`;
  const columns: TableColumns<LotKey> = {
    run: typedColumn("Run", 56, given(0, "run")),
    item: typedColumn("Item", 170, given(1, "item")),
    started: typedColumn("Started", 58, given(2, "started"), { format: "0" }),
    good: typedColumn("Good", 50, given(3, "good"), { format: "0" }),
    hours: typedColumn("Bench hours", 56, given(4), { format: "0.0" }),
    loads: typedColumn("Loads", 50, given(5, "loads"), { format: "0" }),
    energy: typedColumn("kWh", 50, given(6), { format: "0.0" }),
    yield: calcColumn("Yield", 50, (at) => counted(at, `${at("good")}/${at("started")}`), { format: "0.00" }),
    floor: calcColumn(
      "Yield floor",
      54,
      (at) => counted(at, `BLADE.YIELD_FLOOR(${at("good")},${at("started")},${CONFIDENCE})`),
      {
        format: "0.00",
      },
    ),
    each: calcColumn(
      "Hours a start",
      56,
      (at) => `IF(N(${at("started")})*N(${at("hours")})=0,"",${at("hours")}/${at("started")})`,
      {
        format: "0.00",
      },
    ),
    perLoad: calcColumn(
      "kWh a load",
      56,
      (at) => `IF(N(${at("loads")})=0,"",${at("energy")}/${at("loads")})`,
      {
        format: "0.00",
      },
    ),
    all: calcColumn(
      "Yield, all lots of it",
      66,
      (at) => counted(at, `${ofItem("D", at)}/${ofItem("C", at)}`),
      {
        format: "0.00",
      },
    ),
    allFloor: calcColumn(
      "Floor, all lots of it",
      66,
      (at) => counted(at, `BLADE.YIELD_FLOOR(${ofItem("D", at)},${ofItem("C", at)},${CONFIDENCE})`),
      { format: "0.00" },
    ),
  };
  return new TableSheet("Past lots", columns, count, {
    title: "Past lots: what was begun, what came out good, what it took",
    note: "Lines of this run stand here once sent: add hours and kWh. The floor is the yield that the counts support, 95 times in 100.",
    portrait: true,
  });
}
