import type { SheetModel } from "../../model/sheet-model";
import {
  FORMAT,
  field,
  filled,
  fixedBlock,
  fixedName,
  heading,
  helperSheet,
  mark,
  note,
  type Row,
  room,
  title,
  typed,
  worked,
} from "../parts/sheet-parts";
import past from "../run-r07/history.json";

const { headings, rows: lots } = past;

const CONFIDENCE = 2;
const RECORD = 4;
/** Empty rows below the record, for the lots to come. */
const SPARE = 3;
/** First lot; its columns stand in the order of the headings. */
export const FIRST_LOT = RECORD + 3;
export const LOT = { started: 2, good: 3 } as const;
const SUMMARY = FIRST_LOT + lots.length + SPARE + 1;
const ITEMS = new Set(lots.map(([, item]) => item)).size;
/** First item of the summary; more items than there are now still find room. */
export const FIRST_ITEM = SUMMARY + 2;
const ITEM_ROOM = ITEMS + SPARE;

/** Figures of an item, by column. */
export const ITEM = { name: 0, yield: 4, floor: 5, hours: 6, energy: 7 } as const;

function lotRow(lot: readonly (string | number | null)[]): Row {
  const figure = [undefined, undefined, FORMAT.whole, FORMAT.whole, FORMAT.tenth, FORMAT.whole, FORMAT.tenth];
  return lot.map((value, column) => typed(value, figure[column]));
}

function recordRows(): Row[] {
  const empty = headings.map(() => null);
  return [
    [title("The record: a row a lot")],
    headings.map(() => mark("type")),
    headings.map(heading),
    ...lots.map(lotRow),
    ...Array.from({ length: SPARE }, () => lotRow(empty)),
  ];
}

function summaryRows(): Row[] {
  const record = fixedBlock(RECORD + 2, 0, lots.length + SPARE + 1, headings.length);
  const names = ["Item", "Lots", "Started", "Good", "Yield", "Yield floor", "Hours a start", "kWh a load"];
  const formats = [
    FORMAT.whole,
    FORMAT.whole,
    FORMAT.whole,
    FORMAT.hundredth,
    FORMAT.hundredth,
    FORMAT.hundredth,
    FORMAT.hundredth,
  ];
  const figures = formats.map((format) => filled(format));
  return [
    [title("What it says for the next run")],
    names.map(heading),
    [worked(`=BLADE.HISTORY(${record},${fixedName(CONFIDENCE, 1)})`), ...figures],
    ...room(ITEM_ROOM - 1, [filled(), ...figures]),
  ];
}

/** A figure of an item as past lots give it; an error where there is none. */
export function pastFigure(item: string, figure: keyof typeof ITEM, sheet: string): string {
  const column = (key: keyof typeof ITEM) => `${sheet}!${fixedBlock(FIRST_ITEM, ITEM[key], ITEM_ROOM)}`;
  return `INDEX(${column(figure)},MATCH(${item},${column("name")},0))`;
}

/** Past lots, and the yield, hours and energy that they give the next run. */
export function historySheet(): SheetModel {
  const rows: Row[] = [
    [title("History: what was begun, what came out good, what it took")],
    [
      note(
        "The floor is the yield that the counts support: few lots give a low one. The run plan takes its figures from here.",
      ),
    ],
    field(
      "Sure of the floor",
      typed(past.confidence, FORMAT.hundredth),
      "type",
      "chance that the true yield is higher",
    ),
    [],
    ...recordRows(),
    [],
    ...summaryRows(),
  ];
  return helperSheet("Lot history", rows, {
    columnWidths: [170, 170, 76, 76, 76, 90, 100, 90],
    rowHeights: { 0: 28 },
  });
}
