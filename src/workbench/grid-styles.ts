import {
  BorderStyleTypes,
  HorizontalAlign,
  type IStyleData,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import { COLOURS } from "../workbook/colours";
import type { CellModel, Role } from "../workbook/sheet-model";

const { ink: INK, muted: MUTED, head: HEAD, yours: YOURS } = COLOURS;

const line = { s: BorderStyleTypes.THIN, cl: { rgb: COLOURS.line } };
const boxed = { b: line, r: line };

const ROLES: Readonly<Record<Role, IStyleData>> = {
  title: { bl: 1, fs: 11, cl: { rgb: INK } },
  note: { cl: { rgb: MUTED }, fs: 9 },
  heading: { bl: 1, fs: 9, cl: { rgb: INK }, bg: { rgb: HEAD }, bd: boxed },
  mark: { it: 1, fs: 9, cl: { rgb: MUTED }, bg: { rgb: HEAD }, bd: boxed },
  label: { bl: 1, cl: { rgb: INK }, bg: { rgb: YOURS }, bd: boxed },
  typed: { cl: { rgb: INK }, bg: { rgb: YOURS }, bd: boxed },
  worked: { cl: { rgb: INK }, bd: boxed },
  words: { cl: { rgb: INK }, bd: boxed, fs: 9 },
};

export const DEFAULT_STYLE: IStyleData = { ff: "Arial", fs: 10, vt: VerticalAlign.MIDDLE };

/**
 * The grid's style of a cell, with the letters named: drop-down cells do not take them from the sheet.
 * Figures with a number format stand right, words left; in a tall row everything stands at the top, so
 * that of a long caution the first words show.
 */
export function styleOf({ role, format, wrap }: CellModel, tall: boolean): IStyleData {
  return {
    ...DEFAULT_STYLE,
    ...ROLES[role],
    ...(tall ? { vt: VerticalAlign.TOP } : {}),
    ...(wrap ? { tb: WrapStrategy.WRAP } : {}),
    ...(format === undefined
      ? { ht: HorizontalAlign.LEFT }
      : { n: { pattern: format }, ht: HorizontalAlign.RIGHT }),
  };
}
