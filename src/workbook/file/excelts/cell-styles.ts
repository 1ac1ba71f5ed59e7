import type { Borders, Style } from "@cj-tech-master/excelts";
import { COLOURS } from "../../model/colors";
import type { CellModel, Role } from "../../model/sheet-model";

type Dress = Partial<Style>;

export const FONT = "Arial";

/** A colour as a file holds it: opacity in front, no hash. */
export const argb = (colour: string) => ({ argb: `FF${colour.slice(1).toUpperCase()}` });

/** A cell filled with one colour. */
export const filledWith = (colour: string) =>
  ({ type: "pattern", pattern: "solid", fgColor: argb(colour), bgColor: argb(colour) }) as const;

const edge = { style: "thin", color: argb(COLOURS.line) } as const;
const boxed: Partial<Borders> = { top: edge, left: edge, bottom: edge, right: edge };

const font = (size: number, colour: string, rest: Dress["font"] = {}): NonNullable<Dress["font"]> => ({
  name: FONT,
  size,
  color: argb(colour),
  ...rest,
});

const { ink, muted, head, yours } = COLOURS;

const ROLES: Readonly<Record<Role, Dress>> = {
  title: { font: font(13, ink, { bold: true }) },
  note: { font: font(10, muted) },
  heading: { font: font(10, ink, { bold: true }), fill: filledWith(head), border: boxed },
  mark: { font: font(10, muted, { italic: true }), fill: filledWith(head), border: boxed },
  label: { font: font(10, ink, { bold: true }), fill: filledWith(yours), border: boxed },
  typed: { font: font(10, ink), fill: filledWith(yours), border: boxed },
  worked: { font: font(10, ink), border: boxed },
  words: { font: font(10, ink), border: boxed },
};

const HEADS: ReadonlySet<Role> = new Set(["title", "note", "heading", "mark"]);

/** A file's style of a cell: figures stand right, words left with a little room; rows of several lines begin at the top. */
export function styleOf({ role, format, wrap }: CellModel): Dress {
  const isFigure = format !== undefined && role !== "words";
  const isHead = HEADS.has(role);
  const alignment = {
    horizontal: isFigure ? "right" : "left",
    vertical: isHead ? "middle" : "top",
    wrapText: wrap === true,
    ...(isFigure || isHead ? {} : { indent: 1 }),
  } as const;
  return { ...ROLES[role], alignment, ...(format === undefined ? {} : { numFmt: format }) };
}
