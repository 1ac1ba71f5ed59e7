import {
  BorderStyleTypes,
  HorizontalAlign,
  type IStyleData,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import type { CellModel, Role } from "../workbook/sheet-model";

const INK = "#1c2126";
const MUTED = "#565e66";
const HEAD = "#e8ebee";
/** The shade of cells a smith fills in; the word in the row of marks says the same. */
const YOURS = "#fdf3d8";

const line = { s: BorderStyleTypes.THIN, cl: { rgb: "#c3c9cf" } };
const boxed = { b: line, r: line };

const ROLES: Readonly<Record<Role, IStyleData>> = {
  title: { bl: 1, fs: 11, cl: { rgb: INK }, vt: VerticalAlign.MIDDLE },
  note: { cl: { rgb: MUTED }, fs: 9, vt: VerticalAlign.MIDDLE },
  heading: { bl: 1, fs: 9, cl: { rgb: INK }, bg: { rgb: HEAD }, bd: boxed, vt: VerticalAlign.MIDDLE },
  mark: { it: 1, fs: 9, cl: { rgb: MUTED }, bg: { rgb: HEAD }, bd: boxed, vt: VerticalAlign.MIDDLE },
  label: { bl: 1, cl: { rgb: INK }, vt: VerticalAlign.MIDDLE, bg: { rgb: YOURS }, bd: boxed },
  typed: { cl: { rgb: INK }, bg: { rgb: YOURS }, bd: boxed, vt: VerticalAlign.MIDDLE },
  worked: { cl: { rgb: INK }, bd: boxed, vt: VerticalAlign.MIDDLE },
};

export const DEFAULT_STYLE: IStyleData = { ff: "Arial", fs: 10, vt: VerticalAlign.MIDDLE };

/** The grid's style of a cell, with the letters named: drop-down cells do not take them from the sheet. Figures with a number format stand right, words left. */
export function styleOf({ role, format, wrap }: CellModel): IStyleData {
  return {
    ...DEFAULT_STYLE,
    ...ROLES[role],
    ...(wrap ? { tb: WrapStrategy.WRAP } : {}),
    ...(format === undefined
      ? { ht: HorizontalAlign.LEFT }
      : { n: { pattern: format }, ht: HorizontalAlign.RIGHT }),
  };
}
