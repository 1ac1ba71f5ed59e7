import { cellName } from "../../../formula/addresses";
import type { SheetModel } from "../../model/sheet-model";
import {
  FORMAT,
  field,
  filled,
  fixedBlock,
  fixedName,
  headed,
  heading,
  helperSheet,
  note,
  type Row,
  room,
  title,
  typed,
  words,
  worked,
} from "../parts/sheet-parts";
import blanks from "../run-r07/blanks.json";
import type { Run } from "../run-r07/run";
import { swordRows } from "./balance-sheet";
import { planningCell } from "./planning-sheet";

const { rows: cut, offers } = blanks;

const KERF = 2;
const TRIM = 3;
const KEEP = 4;
const BLANKS = 6;
/** First line; its columns are line, steel, starts, length, width, thickness, bar, rack. */
export const FIRST_BLANK = BLANKS + 2;
export const COLUMN = {
  line: 0,
  steel: 1,
  starts: 2,
  length: 3,
  width: 4,
  thickness: 5,
  bar: 6,
  rack: 7,
} as const;
const ORDER = FIRST_BLANK + cut.length + 1;
/** First row of the steel to buy. */
export const FIRST_ORDER = ORDER + 2;
const PLAN = FIRST_ORDER + cut.length + 1;
const LOOKED = PLAN + 1;
const OFFERS = LOOKED + 2;
/** First pattern of the cutting plan of one line. */
export const FIRST_PATTERN = OFFERS + offers.length + 2;

const at = (name: keyof typeof COLUMN) => fixedBlock(FIRST_BLANK, COLUMN[name], cut.length);
const saw = `${fixedName(KERF, 1)},${fixedName(TRIM, 1)}`;

/** Lines of the run that are forged, and the sword on the balance sheet that each of them is. */
const SWORDS: Readonly<Record<number, number>> = { 4: 0, 5: 1 };

export function isForged(line: number): boolean {
  return SWORDS[line] !== undefined;
}

/** Bar that makes a sword: blade and tang by volume, with what grinding, scale and ends cost. */
function forgedLength(sword: number, row: number, balance: string): string {
  const { blade, grind, parts } = swordRows(sword);
  const on = (row: number, column: number) => `${balance}!${cellName(row, column)}`;
  const tang = `${on(parts + 1, 8)}*1000/BLADE.DENSITY(${on(grind + 1, 1)})`;
  const bar = `${cellName(row, COLUMN.width)},${cellName(row, COLUMN.thickness)}`;
  const { grind: allowance, tong } = blanks.forging;
  return `=BLADE.FORGE_LENGTH(${on(blade, 0)}+${tang},${bar},${allowance},,,${tong})`;
}

function blankRow({ lines }: Run, planning: string, balance: string, index: number): Row {
  const row = FIRST_BLANK + index;
  const from = (key: "steel" | "starts") => `='${planning}'!${planningCell(index, key)}`;
  const [length = null, width = 0, thickness = 0, bar = 0, rack = 0] = cut[index] ?? [];
  const sword = SWORDS[index];
  return [
    typed(lines[index]?.line ?? ""),
    worked(from("steel")),
    worked(from("starts"), FORMAT.whole),
    sword === undefined
      ? typed(length, FORMAT.tenth)
      : worked(forgedLength(sword, row, balance), FORMAT.tenth),
    typed(width, FORMAT.tenth),
    typed(thickness, FORMAT.tenth),
    typed(bar, FORMAT.whole),
    typed(rack, FORMAT.tenth),
  ];
}

function blankRows(run: Run, planning: string, balance: string): Row[] {
  return [
    ...headed([
      ["Line", "type"],
      ["Steel", "calc"],
      ["Starts", "calc"],
      ["Length mm", "either"],
      ["Width mm", "type"],
      ["Thickness mm", "type"],
      ["Bar mm", "type"],
      ["In the rack kg", "type"],
    ]),
    ...cut.map((_, index) => blankRow(run, planning, balance, index)),
  ];
}

function orderRows(): Row[] {
  const given = (["steel", "width", "thickness", "length", "starts", "bar"] as const).map(at).join(",");
  const row: Row = [filled(), filled(), filled(FORMAT.whole), filled(FORMAT.tenth), filled(FORMAT.whole)];
  return [
    [title("Steel to buy")],
    ["Steel", "Section", "Bars", "Mass kg", "Drop mm"].map(heading),
    [worked(`=BLADE.STEEL_ORDER(${given},${saw},${at("rack")})`), ...row.slice(1)],
    ...room(cut.length - 1, row),
  ];
}

const PATTERNS = 8;

function planRows(): Row[] {
  const place = `MATCH(${fixedName(LOOKED, 1)},${at("line")},0)`;
  const of = (name: "length" | "starts") => `INDEX(${at(name)},${place})`;
  const offered = (column: number) => fixedBlock(OFFERS + 1, column, offers.length);
  const plan = `=BLADE.CUT_PLAN(${of("length")},${of("starts")},${offered(0)},${saw},${offered(1)},,${fixedName(KEEP, 1)})`;
  const row: Row = [words(), filled(FORMAT.tenth), filled(), filled(FORMAT.tenth), filled(FORMAT.whole)];
  return [
    [title("How to cut one line")],
    field(
      "Line",
      typed(blanks.looked),
      "type",
      "another line may be typed here; then its bars and prices below",
    ),
    [],
    ["Bars on offer mm", "Price a bar"].map(heading),
    ...offers.map(([length = 0, price = 0]) => [typed(length, FORMAT.whole), typed(price, FORMAT.money)]),
    ["Pattern", "Bars", "Pieces a bar", "Drop mm", "Bar mm"].map(heading),
    [words(plan), ...row.slice(1)],
    ...room(PATTERNS - 1, row),
  ];
}

/** Blanks of the run, the steel to buy for them, and the cutting plan of one line. */
export function cutListSheet(run: Run, planning: string, balance: string): SheetModel {
  const rows: Row[] = [
    [title("Cut list: blanks, steel to buy, patterns for the saw")],
    [
      note(
        "Starts come from the planning sheet. The swords are forged: their length is worked out until you type over it.",
      ),
    ],
    field("Kerf mm", typed(blanks.kerf, FORMAT.tenth), "type"),
    field("Trim a bar mm", typed(blanks.trim, FORMAT.tenth), "type", "both ends together"),
    field("Keep off-cuts from mm", typed(blanks.keep, FORMAT.whole), "type", "shorter ones count as waste"),
    [],
    ...blankRows(run, planning, balance),
    [],
    ...orderRows(),
    [],
    ...planRows(),
  ];
  return helperSheet("Cut list", rows, {
    columnWidths: [230, 110, 90, 84, 84, 84, 84, 84],
    rowHeights: { 0: 28, [BLANKS]: 36 },
  });
}
