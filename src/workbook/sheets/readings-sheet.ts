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

export type ReadingKey =
  | "blade"
  | "line"
  | "batch"
  | "lot"
  | "place"
  | "thickness"
  | "least"
  | "block"
  | "blockRead"
  | "first"
  | "second"
  | "third"
  | "mean"
  | "range"
  | "low"
  | "high"
  | "status"
  | "tester"
  | "date"
  | "days";

/** Readings of one blade further apart than this are taken again; common practice, no source. */
const SPREAD = 2;
/** A tester further off its block than this is set right first; common practice, no source. */
const BLOCK_ERROR = 1;

/** Readings of hardness, held against what can be tested there and against the band of the use. */
export function readingsSheet(
  rows: readonly DataRow[],
  { cover, lines }: { readonly cover: Cover; readonly lines: Lines },
  count: number,
): TableSheet<ReadingKey> {
  const given = (column: number) => pick(rows, column);
  const figure = { format: "0.0" };
  const columns: TableColumns<ReadingKey> = {
    blade: typedColumn("Blade no.", 96, given(0)),
    line: typedColumn("Line", 46, given(1)),
    batch: typedColumn("Batch", 50, given(2)),
    place: typedColumn("Place on the blade", 110, given(3)),
    thickness: typedColumn("Thickness there mm", 76, given(4), { format: "0.00" }),
    least: calcColumn(
      "Least for HRC mm",
      62,
      (at) => `IF(${at("mean")}="","",BLADE.TEST_THICKNESS(${at("mean")}))`,
      {
        format: "0.00",
      },
    ),
    block: typedColumn("Test block HRC", 56, given(5), figure),
    blockRead: typedColumn("Block reads", 50, given(6), figure),
    first: typedColumn("1st", 42, given(7), figure),
    second: typedColumn("2nd", 42, given(8), figure),
    third: typedColumn("3rd", 42, given(9), figure),
    mean: calcColumn(
      "Mean HRC",
      48,
      (at) => `IF(COUNT(${at("first")}:${at("third")})=0,"",AVERAGE(${at("first")}:${at("third")}))`,
      { format: "0.00" },
    ),
    range: calcColumn(
      "Range",
      46,
      (at) => `IF(${at("mean")}="","",MAX(${at("first")}:${at("third")})-MIN(${at("first")}:${at("third")}))`,
      figure,
    ),
    low: calcColumn("HRC low", 42, (at) => `INDEX(BLADE.BAND(${lines.lookup("use", at("line"))}),1,1)`, {
      format: "0",
    }),
    high: calcColumn("HRC high", 42, (at) => `INDEX(BLADE.BAND(${lines.lookup("use", at("line"))}),1,3)`, {
      format: "0",
    }),
    status: calcColumn(
      "Status",
      170,
      (at) => {
        const blades = `COUNTIF($A$5:$A$${4 + count},${at("blade")})`;
        const band = `IF(${at("mean")}>${at("high")},"too hard",IF(${at("mean")}<${at("low")},"too soft","inside"))`;
        const spread = `IF(${at("range")}>${SPREAD},"CHECK: readings too far apart",${band})`;
        const block = `IF(AND(${at("block")}<>"",ABS(N(${at("blockRead")})-N(${at("block")}))>${BLOCK_ERROR}),"CHECK: tester off its block",${spread})`;
        const thin = `IF(AND(${at("thickness")}<>"",${at("thickness")}<${at("least")}),"CHECK: too thin for HRC there",${block})`;
        return `IF(${at("mean")}="","",IF(${blades}>1,"TWICE: blade number used twice",${thin}))`;
      },
      { isStatus: true, isBladeStatus: true, wrap: true },
    ),
    tester: typedColumn("Tester", 70, []),
    date: typedColumn("Date", 76, [], { format: DATE_FORMAT }),
    lot: typedColumn("Of lot no.", 90, []),
    days: calcColumn("Dates", 110, (at) => dayCheck([cover.dayOfRun(at("date"))]), {
      isStatus: true,
      wrap: true,
    }),
  };
  return new TableSheet("Hardness readings", columns, count, {
    title: "Hardness readings: three a blade, on flat clean metal",
    note: "Test where the steel is thick enough: tang, ricasso or a coupon, never the edge. Too hard: temper again before the finish grind.",
  });
}

export type Readings = TableSheet<ReadingKey>;
