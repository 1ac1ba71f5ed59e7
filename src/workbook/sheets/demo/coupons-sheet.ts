import { cellName } from "../../../formula/addresses";
import { rowOfLines } from "../../model/row-heights";
import type { SheetModel } from "../../model/sheet-model";
import type { Lines } from "../lines-sheet";
import {
  beside,
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
  title,
  typed,
  words,
  worked,
} from "../parts/sheet-parts";
import demo from "../run-r07/coupons.json";
import type { RunLine } from "../run-r07/run";

const { coupons, oven, hours, line } = demo;

const STEEL = 2;
const TARGET = 3;
const HOURS = 4;
const TEMPERS = 6;
/** Row of the temper by the book alone; that with the coupons follows. */
export const BY_BOOK = TEMPERS + 3;
export const LIKELY = 1;
const TABLES = BY_BOOK + 3;
/** First coupon: its temper, and beside it what it reads. */
export const FIRST_COUPON = TABLES + 3;
export const READING = 1;
const OVEN = 4;
const FIT = FIRST_COUPON + coupons.length + 1;
/** Row of the figures that the coupons come to. */
export const FITTED = FIT + 2;

const steel = fixedName(STEEL, 1);
const target = fixedName(TARGET, 1);
const time = fixedName(HOURS, 1);
const known = `${fixedName(FITTED, 0)},${fixedName(FITTED, 1)}`;

const pairs = (given: (number | null)[][], format: string): Row[] =>
  given.map(([first = null, second = null]) => [typed(first, FORMAT.whole), typed(second, format)]);

function tables(): Row[] {
  const couponTable: Row[] = [
    [title("Coupons, tempered and read")],
    ...headed([
      ["Temper °C", "type"],
      ["Reading HRC", "type"],
    ]),
    ...pairs(coupons, FORMAT.tenth),
  ];
  const ovenTable: Row[] = [
    [title("The oven against a thermometer")],
    ...headed([
      ["Set °C", "type"],
      ["Measured °C", "type"],
    ]),
    ...pairs(oven, FORMAT.whole),
  ];
  return beside(couponTable, ovenTable, OVEN);
}

function fitRows(): Row[] {
  const column = (first: number) => fixedBlock(FIRST_COUPON, first, coupons.length);
  const figures = [
    FORMAT.hundredth,
    FORMAT.hundredth,
    FORMAT.tenth,
    FORMAT.whole,
    FORMAT.tenth,
    FORMAT.hundredth,
  ];
  const names = [
    "Known °C",
    "Known HRC",
    "Shift HRC",
    "± HRC",
    "Readings",
    "Worst misfit",
    "HRC more a 100 °C",
  ];
  return [
    [title("What the coupons say")],
    names.map(heading),
    [
      worked(
        `=BLADE.TEMPER_FIT(${steel},${column(0)},${column(READING)},${time},ROUND(BLADE.TEMPER_FOR(${steel},${target},${time}),0))`,
        FORMAT.whole,
      ),
      ...figures.map((format) => filled(format)),
    ],
  ];
}

function temperRow(index: number, name: string, more: string): Row {
  const row = BY_BOOK + index;
  const given = `${steel},${target},${time}${more}`;
  const plan = (column: number) => `=INDEX(BLADE.TEMPER_PLAN(${given}),1,${column})`;
  const checks = `${fixedBlock(FIRST_COUPON, OVEN, oven.length)},${fixedBlock(FIRST_COUPON, OVEN + 1, oven.length)}`;
  const likely = cellName(row, LIKELY);
  return [
    heading(name),
    worked(`=BLADE.TEMPER_FOR(${given})`, FORMAT.whole),
    worked(`=${likely}*9/5+32`, FORMAT.whole),
    worked(plan(1), FORMAT.whole),
    worked(plan(3), FORMAT.whole),
    worked(`=INDEX(BLADE.OVEN_SET(${likely},${checks}),1,1)`, FORMAT.whole),
    words(plan(4)),
    words(plan(7)),
  ];
}

function temperRows(): Row[] {
  const names = [
    "Worked out",
    "Temper °C",
    "Temper °F",
    "Begin at °C",
    "Hottest °C",
    "Set oven °C",
    "Answer",
    "Caution",
  ];
  return [
    [title("Temper for the hardness wanted")],
    ...headed(names.map((text) => [text, "calc"] as const)),
    temperRow(0, "by the book alone", ""),
    temperRow(1, "with the coupons", `,1,${known}`),
  ];
}

/** The smith's own coupons of one line: what they shift, and the temper that follows. */
export function couponsSheet(run: readonly RunLine[], lines: Lines): SheetModel {
  const from = (key: "steel" | "aim") => `=${lines.at(key, line)}`;
  const rows: Row[] = [
    [title(`Coupons: what this heat reads in this shop · ${run[line]?.item ?? ""}`)],
    [
      note(
        "Change a reading and the temper with the coupons moves. Leave a row empty where there is no coupon.",
      ),
    ],
    field("Steel", worked(from("steel")), "calc"),
    field("Wanted HRC", worked(from("aim"), FORMAT.whole), "calc"),
    field("Hours", typed(hours, FORMAT.whole), "type", "at temperature, once"),
    [],
    ...temperRows(),
    [],
    ...tables(),
    [],
    ...fitRows(),
  ];
  return helperSheet("Coupons", rows, {
    columnWidths: [110, 96, 84, 84, 84, 96, 120, 330],
    rowHeights: { 0: 28, [FIT + 1]: rowOfLines(2), [BY_BOOK]: rowOfLines(5), [BY_BOOK + 1]: rowOfLines(5) },
  });
}
