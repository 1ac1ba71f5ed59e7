import {
  type CellOf,
  calcColumn,
  pick,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
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

/** What past lots took and gave: the honest source for the next quote. */
export function pastLotsSheet(rows: readonly DataRow[], count: number): TableSheet<LotKey> {
  const given = (column: number) => pick(rows, column);
  const first = 5;
  const column = (letters: string) => `$${letters}$${first}:$${letters}$${first + count - 1}`;
  const ofItem = (letters: string, at: CellOf<LotKey>) =>
    `SUMIF(${column("B")},${at("item")},${column(letters)})`;
  const counted = (at: CellOf<LotKey>, formula: string) =>
    `IF(OR(N(${at("started")})=0,${at("good")}=""),"",${formula})`;
  const columns: TableColumns<LotKey> = {
    run: typedColumn("Run", 56, given(0)),
    item: typedColumn("Item", 170, given(1)),
    started: typedColumn("Started", 58, given(2), { format: "0" }),
    good: typedColumn("Good", 50, given(3), { format: "0" }),
    hours: typedColumn("Bench hours", 56, given(4), { format: "0.0" }),
    loads: typedColumn("Loads", 50, given(5), { format: "0" }),
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
    note: "Copy the counts of a finished run here. The floor is the yield that the counts support: true in 95 cases of 100.",
    portrait: true,
  });
}
