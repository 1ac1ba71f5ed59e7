import { InvalidValue, Refusal } from "../../core/refusal";
import { type ItemHistory, itemHistories, type PastRow, SHOP_RECORD } from "../../core/run/history";
import { USUAL_FLOOR_CONFIDENCE, YIELD_BOUND } from "../../core/run/yield-floor";
import { refusedRow } from "../answer";
import { type Cell, type Cells, isEmpty } from "../cells";
import { type Column, tableFunction } from "../declare";
import { blades, confidence } from "../money/arguments";
import { number, numberOrNothing, optionalNumber, table, text } from "../parameters";
import { readHeadings, type TableColumns } from "./heading-row";
import { filledRows, readRow } from "./table-rows";

const HEADINGS = {
  item: text({
    label: "item",
    kind: "name",
    help: "What was made.",
    accepts: "a name",
    find: (given) => String(given),
  }),
  started: number(blades({ label: "started", help: "Pieces begun." })),
  good: number({ ...blades({ label: "good", help: "Good pieces." }), min: 0 }),
  hours: numberOrNothing({
    label: "hours",
    quantity: "time",
    unit: "h",
    min: 0,
    help: "Bench hours of the lot.",
  }),
  loads: numberOrNothing({
    label: "loads",
    quantity: "count",
    unit: "",
    whole: true,
    min: 0,
    help: "Furnace loads.",
  }),
  kilowattHours: numberOrNothing({
    label: "kWh",
    quantity: "number",
    unit: "kWh",
    min: 0,
    help: "Metered energy of the lot.",
  }),
};

const FIGURES: readonly Column[] = [
  { label: "lots", unit: "" },
  { label: "started", unit: "" },
  { label: "good", unit: "" },
  { label: "yield", unit: "" },
  { label: "yield floor", unit: "" },
  { label: "hours a start", unit: "h" },
  { label: "kWh a load", unit: "kWh" },
];

function pastRow(row: readonly Cell[], at: number, columns: TableColumns): PastRow | undefined {
  const read = readRow(row, columns, HEADINGS);
  if (!(read instanceof Refusal)) return read;
  const item = row[columns.known.get("item") ?? -1] ?? null;
  const sentence = `row ${at + 1}: ${read.message}`;
  // Without its item a faulty lot might belong to any of them.
  if (item instanceof Refusal || isEmpty(item)) throw new InvalidValue(sentence);
  return { item: String(item), refusal: new InvalidValue(sentence) };
}

function figures({ record }: ItemHistory): Cell[] {
  if (record instanceof Refusal) return refusedRow(record, FIGURES);
  const { lots, started, good, yieldShare, yieldFloor, hoursAStart, energyALoad } = record;
  return [lots, started, good, yieldShare, yieldFloor, hoursAStart ?? "", energyALoad ?? ""];
}

function history(lines: Cells, confidence: number): Cells {
  const [top = [], ...rows] = filledRows(lines);
  const columns = readHeadings(top, HEADINGS, { line: "item", starts: "started" });
  const past = rows.map((row, at) => pastRow(row, at + 1, columns)).filter((row) => row !== undefined);
  const remarks = columns.remarks.map((remark): Cell[] => [
    "remark",
    remark,
    ...FIGURES.slice(1).map(() => ""),
  ]);
  return [...itemHistories(past, confidence).map((item) => [item.item, ...figures(item)]), ...remarks];
}

export const HISTORY = tableFunction({
  name: "HISTORY",
  summary:
    "What past lots say for the next quote, a row an item: yield, the yield the counts support, hours a start, kWh a load.",
  parameters: {
    lines: table({
      label: "lines",
      help: "Your record, a row a lot, with the headings item, started, good and, where known, hours, loads, kWh in its first row.",
      accepts: "a table whose first row holds item, started, good, hours, loads, kWh",
    }),
    confidence: optionalNumber({
      ...confidence({ help: "Chance that the true yield is above the floor, below 1." }),
      fallback: USUAL_FLOOR_CONFIDENCE,
    }),
  },
  result: [{ label: "item", unit: "text" }, ...FIGURES],
  relations: [SHOP_RECORD, YIELD_BOUND],
  compute: ({ lines, confidence }) => history(lines, confidence),
});
