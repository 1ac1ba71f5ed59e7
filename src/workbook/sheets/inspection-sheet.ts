import type { Lines } from "./lines-sheet";
import {
  type CellOf,
  calcColumn,
  pick,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import type { DataRow } from "./template-data";

export type InspectionKey =
  | "line"
  | "lot"
  | "what"
  | "class"
  | "limit"
  | "level"
  | "letter"
  | "sample"
  | "accept"
  | "reject"
  | "found"
  | "decision"
  | "action";

/** What is looked at on how many pieces, and whether the lot passes. */
export function inspectionSheet(
  rows: readonly DataRow[],
  lines: Lines,
  count: number,
): TableSheet<InspectionKey> {
  const given = (column: number) => pick(rows, column);
  const all = (at: CellOf<InspectionKey>) => `OR(${at("class")}="critical",${at("limit")}="")`;
  const plan = (at: CellOf<InspectionKey>, column: number) =>
    `INDEX(BLADE.SAMPLE_PLAN(${at("lot")},${at("limit")},${at("level")}),1,${column})`;
  const columns: TableColumns<InspectionKey> = {
    line: typedColumn("Line", 46, given(0)),
    lot: calcColumn("Pieces in the lot", 60, (at) => lines.lookup("good", at("line")), { format: "0" }),
    what: typedColumn("Looked at", 210, given(1)),
    class: typedColumn("Class", 70, given(2), { words: ["critical", "major", "minor"] }),
    limit: typedColumn("AQL", 46, given(3), { format: "0.0#" }),
    level: typedColumn(
      "Level",
      46,
      rows.map(() => "II"),
      { words: ["I", "II", "III", "S-1", "S-2", "S-3", "S-4"] },
    ),
    letter: calcColumn("Letter", 48, (at) => `IF(${all(at)},"all",${plan(at, 1)})`),
    sample: calcColumn("Test pieces", 50, (at) => `IF(${all(at)},${at("lot")},${plan(at, 2)})`, {
      format: "0",
    }),
    accept: calcColumn("Bad ones allowed", 62, (at) => `IF(${all(at)},0,${plan(at, 3)})`, { format: "0" }),
    reject: calcColumn("Reject from", 56, (at) => `IF(${all(at)},1,${plan(at, 4)})`, { format: "0" }),
    found: typedColumn("Bad ones found", 56, given(4), { format: "0" }),
    decision: calcColumn(
      "Decision",
      110,
      (at) => `IF(${at("found")}="","",IF(${at("found")}<=${at("accept")},"PASS","FAIL: hold the lot"))`,
      { isStatus: true },
    ),
    action: typedColumn("What is done", 240, given(5), { wrap: true }),
  };
  return new TableSheet("Inspection", columns, count, {
    title: "Inspection: how many to look at, and whether the lot passes",
    note: "Critical, or no AQL: every piece. Cracks, loose hilts and a sharp edge where it must be blunt are critical always.",
  });
}
