import type { Cover } from "./cover-sheet";
import type { Lines } from "./lines-sheet";
import { dayCheck } from "./parts/day-checks";
import { lineColumns } from "./parts/line-columns";
import {
  calcColumn,
  DATE_FORMAT,
  eitherColumn,
  pick,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import { rackCall } from "./steel-choice-sheet";
import type { Steels } from "./steels-sheet";
import type { DataRow } from "./template-data";

export type EnquiryKey =
  | "line"
  | "item"
  | "customer"
  | "edge"
  | "finish"
  | "mass"
  | "massNow"
  | "massStatus"
  | "balance"
  | "ceiling"
  | "ordered"
  | "now"
  | "changed"
  | "fits"
  | "ready"
  | "days"
  | "destination"
  | "notes";

/** A blade lighter or heavier than wished by more than this share is remarked on; common practice, no source. */
const MASS_TOLERANCE = 0.15;

/** The first steel of the rack for a line, with the word for it; "none" where the rack is empty or nothing is asked. */
function firstOfRack(lines: Lines, steels: Steels, index: number): string {
  const at = (key: "use" | "thickness" | "quench" | "length") => lines.at(key, index);
  const blade = { use: at("use"), thickness: at("thickness"), quench: at("quench"), length: at("length") };
  const list = rackCall(blade, steels, '"either",RACK,1');
  const isAsked = `OR(${at("use")}="",COUNTIF(${steels.block("grade")},"?*")=0)`;
  return `IF(${isAsked},"none",INDEX(${list},1,1)&": "&INDEX(${list},1,2))`;
}

/** What the customer asked for, and whether the plan still keeps to it. */
export function enquirySheet(
  rows: readonly DataRow[],
  leadTimes: readonly string[],
  { cover, lines, steels }: { readonly cover: Cover; readonly lines: Lines; readonly steels: Steels },
): TableSheet<EnquiryKey> {
  const given = (column: number) => pick(rows, column);
  const columns: TableColumns<EnquiryKey> = {
    ...lineColumns<EnquiryKey>(() => lines, 174),
    customer: eitherColumn("Customer", 180, given(0), () => `${cover.at("customers")}&""`),
    edge: typedColumn("Sharp or blunt", 66, given(1), { words: ["sharp", "blunt"] }),
    finish: typedColumn("Finish", 150, given(2)),
    mass: typedColumn("Mass wished g", 62, given(3), { format: "0" }),
    massNow: calcColumn("Mass planned g", 66, (_, index) => lines.at("mass", index), {
      format: "0",
      needs: (_, index) => [lines.at("mass", index)],
    }),
    massStatus: calcColumn(
      "Against the wish",
      96,
      (at) =>
        `IF(${at("mass")}="","",IF(${at("massNow")}>${at("mass")}*${1 + MASS_TOLERANCE},"HIGH",IF(${at("massNow")}<${at("mass")}*${1 - MASS_TOLERANCE},"LOW","OK")))`,
      { isStatus: true },
    ),
    balance: typedColumn("Balance wished mm", 66, given(4), { format: "0" }),
    ceiling: typedColumn("Price at most", 70, given(5), { format: "#,##0.00" }),
    ordered: typedColumn("Quantity as ordered", 70, given(6), { format: "0" }),
    now: calcColumn("Quantity now", 66, (_, index) => lines.at("good", index), {
      format: "0",
      needs: (_, index) => [lines.at("good", index)],
    }),
    changed: calcColumn(
      "Since the order",
      120,
      (at) =>
        `IF(${at("ordered")}="","",IF(${at("ordered")}=${at("now")},"OK","CHANGED from "&${at("ordered")}))`,
      { isStatus: true },
    ),
    fits: calcColumn("Of the rack fits first", 130, (_, index) => firstOfRack(lines, steels, index), {
      wrap: true,
    }),
    ready: eitherColumn(
      "Ready",
      82,
      leadTimes,
      () => `IF(${cover.at("due")}="","to be agreed",${cover.at("due")})`,
      {
        format: DATE_FORMAT,
      },
    ),
    days: calcColumn(
      "Dates",
      120,
      (at) =>
        dayCheck([
          {
            cell: at("ready"),
            name: "ready",
            mayBeWords: true,
            notBefore: [[cover.today, "the day of the figures"]],
            notAfter: [[cover.at("due"), "the day it is due"]],
          },
        ]),
      { isStatus: true, wrap: true },
    ),
    destination: typedColumn("Where it goes", 180, given(7)),
    notes: typedColumn("Notes", 220, given(8)),
  };
  return new TableSheet("Enquiry", columns, lines.count, {
    title: "Enquiry: what was asked for, line by line",
    note: "Mass planned is the blade alone, without tang and fittings. Type the quantity once the order is confirmed: a later change shows. Steel choice tells why a steel of the rack fits.",
    frozenColumns: 2,
  });
}

export type Enquiry = TableSheet<EnquiryKey>;
