import type { Cover } from "./cover-sheet";
import type { Lines } from "./lines-sheet";
import { dayCheck } from "./parts/day-checks";
import {
  calcColumn,
  DATE_FORMAT,
  pick,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import type { DataRow } from "./template-data";

export type ShippingKey =
  | "box"
  | "line"
  | "item"
  | "pieces"
  | "numbers"
  | "each"
  | "packing"
  | "mass"
  | "papers"
  | "restricted"
  | "carrier"
  | "date"
  | "days";

/** Boxes: which blades, what they weigh, what goes with them. */
export function shippingSheet(
  rows: readonly DataRow[],
  { cover, lines }: { readonly cover: Cover; readonly lines: Lines },
  count: number,
): TableSheet<ShippingKey> {
  const given = (column: number) => pick(rows, column);
  const columns: TableColumns<ShippingKey> = {
    box: typedColumn("Box", 46, given(0)),
    line: typedColumn("Line", 46, given(1)),
    item: calcColumn("Item", 140, (at) => lines.lookup("item", at("line"))),
    pieces: typedColumn("Pieces", 52, given(2), { format: "0" }),
    numbers: typedColumn("Blade numbers", 140, given(3)),
    each: calcColumn("Blade g", 56, (at) => lines.lookup("mass", at("line")), { format: "0" }),
    packing: typedColumn("Fittings and packing kg", 74, given(4), { format: "0.0" }),
    mass: calcColumn("Box kg, about", 60, (at) => `${at("pieces")}*${at("each")}/1000+N(${at("packing")})`, {
      format: "0.0",
    }),
    papers: typedColumn("Papers in the box", 180, given(5), { wrap: true }),
    restricted: typedColumn("Restricted goods checked by, for", 120, []),
    carrier: typedColumn("Carrier", 90, []),
    date: typedColumn("Sent", 76, [], { format: DATE_FORMAT }),
    days: calcColumn("Dates", 110, (at) => dayCheck([cover.dayOfRun(at("date"))]), {
      isStatus: true,
      wrap: true,
    }),
  };
  return new TableSheet("Shipping", columns, count, {
    title: "Shipping: boxes, what is in them, what goes with them",
    note: "Blade g is the bare blade without tang: weigh the box. Whether blades may be posted, and to whom, differs by place and carrier.",
  });
}

export type Shipping = TableSheet<ShippingKey>;
