import {
  BooleanNumber,
  HorizontalAlign,
  type IBorderStyleData,
  type IStyleData,
  type Nullable,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import { type CellStyle, EDGE_KINDS, type Edge, SIDES } from "../../workbook/model/workbook-data";

/** The style of a cell that has none of its own. */
export const DEFAULT_STYLE: IStyleData = { ff: "Arial", fs: 10, vt: VerticalAlign.MIDDLE };

const HORIZONTAL = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
} as const;
const VERTICAL = {
  top: VerticalAlign.TOP,
  center: VerticalAlign.MIDDLE,
  bottom: VerticalAlign.BOTTOM,
} as const;
const BORDERS = { left: "l", right: "r", top: "t", bottom: "b" } as const;

/** What a cell keeps free of its sides in pixels, as the grid has it, and what a step of indent adds on the left. */
const PADDING = { t: 0, r: 2, b: 2, l: 2 };
const INDENT_STEP = 2;
/** Where a text stands off one side it may come nearer to the other: so much room as before is left for it. */
const BOTH = PADDING.l + PADDING.r;

/** Words with an indent and figures that stand right keep off each other. */
function paddingOf({ indent, horizontal }: CellStyle): Pick<IStyleData, "pd"> {
  if (horizontal === "right") return { pd: { ...PADDING, l: 0, r: BOTH } };
  if (indent === undefined) return {};
  const left = PADDING.l + indent * INDENT_STEP;
  return { pd: { ...PADDING, l: left, r: Math.max(0, BOTH - left) } };
}

const on = { s: BooleanNumber.TRUE };
const edgeStyle = ({ kind, color }: Edge): IBorderStyleData => ({
  s: EDGE_KINDS.indexOf(kind) as IBorderStyleData["s"],
  cl: { rgb: color },
});

function bordersOf(edges: NonNullable<CellStyle["edges"]>) {
  const sides = SIDES.flatMap((side) => {
    const edge = edges[side];
    return edge === undefined ? [] : [[BORDERS[side], edgeStyle(edge)]];
  });
  return { bd: Object.fromEntries(sides) };
}

/** The letters of a cell. */
function lettersOf({ font, size, bold, italic, underline, strike, color }: CellStyle): IStyleData {
  return {
    ...(font === undefined ? {} : { ff: font }),
    ...(size === undefined ? {} : { fs: size }),
    ...(bold ? { bl: BooleanNumber.TRUE } : {}),
    ...(italic ? { it: BooleanNumber.TRUE } : {}),
    ...(underline ? { ul: on } : {}),
    ...(strike ? { st: on } : {}),
    ...(color === undefined ? {} : { cl: { rgb: color } }),
  };
}

/** The grid's style for a style. The letters are always named: drop-down cells do not take them from the sheet. */
export function gridStyleOf(style: CellStyle): IStyleData {
  const { fill, edges, horizontal, vertical, wraps, format } = style;
  return {
    ...DEFAULT_STYLE,
    ...lettersOf(style),
    ...(fill === undefined ? {} : { bg: { rgb: fill } }),
    ...(edges === undefined ? {} : bordersOf(edges)),
    ...(horizontal === undefined ? {} : { ht: HORIZONTAL[horizontal] }),
    ...(vertical === undefined ? {} : { vt: VERTICAL[vertical] }),
    ...paddingOf(style),
    ...(wraps ? { tb: WrapStrategy.WRAP } : {}),
    ...(format === undefined ? {} : { n: { pattern: format } }),
  };
}

/** `#rrggbb` from the forms in which the grid keeps colours. */
function hexOf(color: Nullable<string>): string | undefined {
  if (typeof color !== "string") return undefined;
  if (/^#[0-9a-f]{6}$/i.test(color)) return color.toLowerCase();
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/i.exec(color);
  if (short !== null)
    return `#${short
      .slice(1)
      .map((digit) => digit + digit)
      .join("")}`.toLowerCase();
  const channels = /^rgba?\((\d+),\s*(\d+),\s*(\d+)/.exec(color)?.slice(1);
  return channels && `#${channels.map((value) => Number(value).toString(16).padStart(2, "0")).join("")}`;
}

function edgesOf({ bd }: IStyleData): CellStyle["edges"] {
  const sides = SIDES.flatMap((side) => {
    const border = bd?.[BORDERS[side]];
    const kind = EDGE_KINDS[border?.s ?? 0];
    if (kind === undefined || kind === "none") return [];
    return [[side, { kind, color: hexOf(border?.cl?.rgb) ?? "#000000" }] as const];
  });
  return sides.length === 0 ? undefined : Object.fromEntries(sides);
}

const wordOf = <T extends string>(words: Readonly<Record<T, number>>, value: Nullable<number>) =>
  (Object.keys(words) as T[]).find((word) => words[word] === value);

function indentOf({ pd }: IStyleData): number | undefined {
  const indent = Math.round(((pd?.l ?? PADDING.l) - PADDING.l) / INDENT_STEP);
  return indent > 0 ? indent : undefined;
}

/** The style of a cell from a style of the grid, without what is left to the grid. */
export function cellStyleOf(style: IStyleData): CellStyle {
  const isOn = (mark: Nullable<{ s: BooleanNumber }>) => mark?.s === BooleanNumber.TRUE;
  const found = {
    font: style.ff ?? undefined,
    size: style.fs,
    bold: style.bl === BooleanNumber.TRUE || undefined,
    italic: style.it === BooleanNumber.TRUE || undefined,
    underline: isOn(style.ul) || undefined,
    strike: isOn(style.st) || undefined,
    color: hexOf(style.cl?.rgb),
    fill: hexOf(style.bg?.rgb),
    edges: edgesOf(style),
    horizontal: wordOf(HORIZONTAL, style.ht),
    vertical: wordOf(VERTICAL, style.vt),
    indent: indentOf(style),
    wraps: style.tb === WrapStrategy.WRAP || undefined,
    format: style.n?.pattern,
  };
  const set = Object.entries(found).filter(([, value]) => value !== undefined);
  return Object.fromEntries(set) as CellStyle;
}
