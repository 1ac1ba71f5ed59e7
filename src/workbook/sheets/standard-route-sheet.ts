import { shifted } from "../../formula/references";
import { millimetresOr0 } from "./parts/sheet-parts";
import { calcColumn, type TableColumns, TableSheet, typedColumn } from "./parts/table-sheet";

export type StandardStepKey = "operation" | "place" | "setUp" | "each" | "area" | "yield" | "share";

/** Steps that the traveller has room for. */
export const MAX_STEPS = 8;

/** Operation, where, set-up min, min a piece, min a dm² of blade, yield; common practice, no source. */
const USUAL: readonly (readonly [string, string, number, number, number, number])[] = [
  ["saw and profile", "saw, grinder", 20, 10, 2, 1],
  ["drill, mark", "bench", 15, 5, 0, 1],
  ["harden and temper", "furnace", 45, 10, 0, 0.97],
  ["straighten, test hardness", "bench", 20, 6, 1, 0.99],
  ["bevel and finish grind", "grinder", 30, 20, 10, 0.98],
  ["handle, sharpen, inspect, pack", "bench", 30, 30, 2, 0.99],
];

const MM2_PER_DM2 = 10_000;
const MINUTES = 60;

/** The steps that every line goes through unless the sheet Route has its own for it. */
export class StandardRoute extends TableSheet<StandardStepKey> {
  constructor() {
    const given = (column: number) => USUAL.map((row) => row[column] ?? null);
    const columns: TableColumns<StandardStepKey> = {
      operation: typedColumn("Operation", 220, given(0)),
      place: typedColumn("Where", 110, given(1)),
      setUp: typedColumn("Set-up min", 60, given(2), { format: "0" }),
      each: typedColumn("Minutes a piece", 66, given(3), { format: "0" }),
      area: typedColumn("Minutes a dm² of blade", 90, given(4), { format: "0.0" }),
      yield: typedColumn("Yield", 56, given(5), { format: "0.00" }),
      share: calcColumn(
        "Share that comes in",
        80,
        (at, index) => {
          const above = (key: StandardStepKey) => shifted(at(key), -1, 0);
          return index === 0 ? "1" : `N(${above("share")})*IF(${above("yield")}="",1,${above("yield")})`;
        },
        { format: "0.00" },
      ),
    };
    super("Standard route", columns, MAX_STEPS, {
      title: "Standard route: the steps of every line without a route of its own",
      note: "Common practice, no source: put your own times. A line with steps on the sheet Route takes those instead.",
      // Narrow enough to be seen whole: its title is wider than what would be left beside a frozen column.
      frozenColumns: 0,
      portrait: true,
    });
  }

  /** Share that comes out good of all steps together. */
  get wholeYield(): string {
    return `PRODUCT(${this.block("yield")})`;
  }

  get setUpHours(): string {
    return `SUM(${this.block("setUp")})/${MINUTES}`;
  }

  /** Hours of so many starts of a blade of so much length and width in mm, set-up apart. */
  hours(starts: string, length: string, width: string): string {
    const times = (key: "each" | "area") => `SUMPRODUCT(${this.block(key)},${this.block("share")})`;
    return `${starts}*(${times("each")}+${millimetresOr0(length)}*${millimetresOr0(width)}/${MM2_PER_DM2}*${times("area")})/${MINUTES}`;
  }
}
