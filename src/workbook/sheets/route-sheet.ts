import { shifted } from "../../formula/references";
import type { Lines } from "./lines-sheet";
import { fixedName } from "./parts/sheet-parts";
import { calcColumn, FIRST_ROW, pick, type TableColumns, TableSheet, typedColumn } from "./parts/table-sheet";
import type { DataRow } from "./template-data";

export type RouteKey =
  | "line"
  | "step"
  | "operation"
  | "place"
  | "setUp"
  | "each"
  | "quantity"
  | "yield"
  | "out"
  | "hours"
  | "consumable";

/** Steps of every line in their order, with what goes in, what comes out good and what it takes. */
export function routeSheet(rows: readonly DataRow[], lines: Lines, count: number): TableSheet<RouteKey> {
  const names = lines.block("line");
  const columns: TableColumns<RouteKey> = {
    line: typedColumn("Line", 46, pick(rows, 0)),
    step: calcColumn("Step", 46, (at) => `COUNTIF(${fixedName(FIRST_ROW, 0)}:${at("line")},${at("line")})`, {
      format: "0",
    }),
    operation: typedColumn("Operation", 220, pick(rows, 1)),
    place: typedColumn("Where", 90, pick(rows, 2)),
    setUp: typedColumn("Set-up min", 60, pick(rows, 3), { format: "0" }),
    each: typedColumn("Minutes a piece", 66, pick(rows, 4), { format: "0" }),
    quantity: calcColumn(
      "Pieces in",
      60,
      (at) => {
        const line = at("line");
        const above = (key: RouteKey) => shifted(at(key), -1, 0);
        return `IF(${at("step")}=1,INDEX(${lines.block("starts")},MATCH(${line},${names},0)),${above("out")})`;
      },
      { format: "0.0" },
    ),
    yield: typedColumn("Yield", 56, pick(rows, 5), { format: "0.00" }),
    out: calcColumn(
      "Good out, expected",
      72,
      (at) => `${at("quantity")}*IF(${at("yield")}="",1,${at("yield")})`,
      {
        format: "0.0",
      },
    ),
    hours: calcColumn("Hours", 56, (at) => `(N(${at("setUp")})+N(${at("each")})*${at("quantity")})/60`, {
      format: "0.0",
    }),
    consumable: typedColumn("Consumed", 160, pick(rows, 6)),
  };
  return new TableSheet("Route", columns, count, {
    title: "Route: the steps of every line, in their order",
    note: "A line's steps together, in order: pieces of one go into the next. The traveller prints them.",
    frozenColumns: 3,
    portrait: true,
  });
}

export type Route = TableSheet<RouteKey>;
