import type { Batches } from "./batches-sheet";
import type { Cover } from "./cover-sheet";
import type { Lines } from "./lines-sheet";
import { dayCheck } from "./parts/day-checks";
import { checkFormula } from "./parts/remarks";
import {
  type CellOf,
  calcColumn,
  DATE_FORMAT,
  dateSerial,
  eitherColumn,
  pick,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import type { Readings } from "./readings-sheet";
import { LOTS_RECEIVED } from "./sheets-of-the-plan";
import type { DataRow } from "./template-data";

export type LotReceivedKey =
  | "batch"
  | "line"
  | "sent"
  | "back"
  | "date"
  | "days"
  | "lot"
  | "temper"
  | "hours"
  | "read"
  | "mean"
  | "lowest"
  | "highest"
  | "outside"
  | "sample"
  | "accept"
  | "verdict"
  | "knownC"
  | "knownHrc";

/** Acceptable quality level of hardness in a lot that comes back, %; common practice, no source. */
const HARDNESS_AQL = 2.5;
/** No lot is called so: "not this one" is true of every reading, of those without a lot too. */
const NO_LOT = "no such lot";

interface Sources {
  readonly cover: Cover;
  readonly lines: Lines;
  readonly batches: Batches;
  readonly readings: Readings;
}

type At = CellOf<LotReceivedKey>;

/** What the readings of a lot come to: enough of them, and no more outside the band than the sample allows. */
function verdictOf(at: At, back: string): string {
  const few = `"CHECK: "&${at("read")}&" blades read, the lot needs "&${at("sample")}`;
  const counted = `IF(${at("outside")}>${at("accept")},"FAIL: hold the lot, "&${at("outside")}&" outside the band",IF(${at("read")}<${at("sample")},${few},"PASS"))`;
  const missing = checkFormula([
    {
      when: `${back}<N(${at("sent")})`,
      said: `(N(${at("sent")})-${back})&" pieces are missing"`,
    },
    {
      when: `${back}>N(${at("sent")})`,
      said: `(${back}-N(${at("sent")}))&" pieces more than were sent"`,
    },
  ]);
  return `IF(${at("back")}="","not back yet",IF(${at("read")}=0,"CHECK: no readings",IF(LEFT(${missing},2)="OK",${counted},IF(LEFT(${counted},4)="PASS",${missing},${counted}))))`;
}

/**
 * Lots that come back hardened, in the house or from outside: what was sent, how the lot was run, what its readings
 * say of it, and the coupon that they are for the next run.
 */
export function lotsReceivedSheet(
  rows: readonly DataRow[],
  sources: Sources,
  count: number,
): TableSheet<LotReceivedKey> {
  const { cover, lines, batches, readings } = sources;
  const given = (column: number) => pick(rows, column);
  const dates = given(1).map((date) => (typeof date === "string" ? dateSerial(date) : null));
  const same = (key: "batch" | "line") => (_: unknown, index: number) => {
    if (index >= batches.count) return `""`;
    const cell = batches.at(key, index);
    return `IF(${cell}="","",${cell})`;
  };
  const ofBatch = (at: At) =>
    `${batches.block("batch")},${at("batch")},${batches.block("line")},${at("line")}`;
  // Where a batch comes back in several lots, a reading says of which it is.
  const ofLot = (at: At) => `IF(${rowsOfBatch(at)}>1,${at("lot")}&"","<>${NO_LOT}")`;
  const rowsOfBatch = (at: At) =>
    `COUNTIFS(${sheet().block("batch")},${at("batch")},${sheet().block("line")},${at("line")})`;
  const own = (at: At) =>
    `${readings.block("batch")},${at("batch")},${readings.block("line")},${at("line")},${readings.block("lot")},${ofLot(at)}`;
  const piecesBack = (at: At) =>
    `SUMIFS(${sheet().block("back")},${sheet().block("batch")},${at("batch")},${sheet().block("line")},${at("line")})`;
  const status = readings.block("status");
  // Readings that are to be taken again say nothing of the lot.
  const counting = (at: At) =>
    `${own(at)},${status},"<>CHECK*",${status},"<>TWICE*",${readings.block("mean")},">0"`;
  const ofReadings = (name: string) => (at: At) =>
    `IF(${at("read")}=0,"none",${name}(${readings.block("mean")},${counting(at)}))`;
  const outside = (at: At, word: string) => `COUNTIFS(${own(at)},${status},"${word}*")`;
  const plan = (at: At, column: number) =>
    `IFERROR(INDEX(BLADE.SAMPLE_PLAN(${at("back")},${HARDNESS_AQL},"S-2"),1,${column}),"none")`;
  const steel = (at: At) => lines.lookup("steel", at("line"));
  const coupon = (at: At, column: number) =>
    `IF(OR(${at("temper")}="",${at("read")}=0),"none",IFERROR(INDEX(BLADE.TEMPER_FIT(${steel(at)},${at("temper")},${at("mean")},${at("hours")}),1,${column}),"none"))`;
  const columns: TableColumns<LotReceivedKey> = {
    batch: eitherColumn("Batch", 50, [], same("batch")),
    line: eitherColumn("Line", 46, [], same("line")),
    sent: calcColumn("Pieces sent", 52, (at) => `SUMIFS(${batches.block("pieces")},${ofBatch(at)})`, {
      format: "0",
    }),
    back: typedColumn("Pieces back", 52, given(0), { format: "0" }),
    date: typedColumn("Back on", 82, dates, { format: DATE_FORMAT }),
    days: calcColumn("Dates", 110, (at) => dayCheck([cover.dayOfRun(at("date"))]), {
      isStatus: true,
      wrap: true,
    }),
    lot: typedColumn("Treatment lot no.", 90, given(2)),
    temper: typedColumn("Temper as run °C", 66, given(3), { format: "0" }),
    hours: typedColumn("Hours of temper", 60, given(4), { format: "0.0" }),
    read: calcColumn("Blades read", 52, (at) => `COUNTIFS(${counting(at)})`, { format: "0" }),
    mean: calcColumn("Mean HRC", 52, ofReadings("AVERAGEIFS"), { format: "0.0" }),
    lowest: calcColumn("Lowest", 50, ofReadings("MINIFS"), { format: "0.0" }),
    highest: calcColumn("Highest", 58, ofReadings("MAXIFS"), { format: "0.0" }),
    outside: calcColumn(
      "Outside the band",
      56,
      (at) => `${outside(at, "too hard")}+${outside(at, "too soft")}`,
      { format: "0" },
    ),
    sample: calcColumn("To be read", 50, (at) => plan(at, 2), { format: "0", needs: (at) => [at("back")] }),
    accept: calcColumn("Outside allowed", 56, (at) => plan(at, 3), {
      format: "0",
      needs: (at) => [at("back")],
    }),
    verdict: calcColumn("Lot", 190, (at) => verdictOf(at, piecesBack(at)), { isStatus: true, wrap: true }),
    knownC: calcColumn("Coupon: known °C", 66, (at) => coupon(at, 1), { format: "0" }),
    knownHrc: calcColumn("Coupon: known HRC", 66, (at) => coupon(at, 2), { format: "0.0" }),
  };
  const made = new TableSheet<LotReceivedKey>(LOTS_RECEIVED, columns, count, {
    title: "Lots received: hardened lots that came back, what their readings say",
    note: "Readings: on Hardness readings. A batch in parts: a row a lot, its lot no. beside each reading. SAMPLE_PLAN at AQL 2.5, level S-2. The coupon is for Recipe in the next run of this heat.",
    frozenColumns: 2,
  });
  const sheet = () => made;
  return made;
}
