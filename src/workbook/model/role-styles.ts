import { COLORS } from "./colors";
import type { CellStyle, Edge } from "./workbook-data";

/**
 * What a cell is for; `words` are worked out like `worked`, but long; `open` and `openLabel` stand on a paper without a
 * box, so that nothing is printed where they are empty.
 */
export type Role =
  | "title"
  | "note"
  | "heading"
  | "mark"
  | "label"
  | "typed"
  | "worked"
  | "words"
  | "open"
  | "openLabel";

const { ink, muted, head, yours } = COLORS;

const line: Edge = { kind: "thin", color: COLORS.line };
const boxed: CellStyle = { edges: { left: line, right: line, top: line, bottom: line } };
const letters: CellStyle = { font: "Arial", size: 10, color: ink };

const ROLES: Readonly<Record<Role, CellStyle>> = {
  title: { ...letters, size: 13, bold: true },
  note: { ...letters, color: muted },
  heading: { ...letters, bold: true, fill: head, ...boxed },
  mark: { ...letters, color: muted, italic: true, fill: head, ...boxed },
  label: { ...letters, bold: true, fill: yours, ...boxed },
  typed: { ...letters, fill: yours, ...boxed },
  worked: { ...letters, ...boxed },
  words: { ...letters, ...boxed },
  open: letters,
  openLabel: { ...letters, bold: true },
};

const HEADS: ReadonlySet<Role> = new Set(["title", "note", "heading", "mark"]);

/** The styled cell that a role asks for. */
export interface Styled {
  readonly role: Role;
  readonly format?: string;
  readonly wrap?: boolean;
  /** A heading in front of a value begins at the top, as the value does; one above a column stands in the middle. */
  readonly isInFront?: boolean;
}

/** Figures stand right, words left with a little room; rows of several lines begin at the top. */
export function styleOfRole({ role, format, wrap, isInFront }: Styled): CellStyle {
  const isFigure = format !== undefined && role !== "words";
  const isHead = HEADS.has(role);
  return {
    ...ROLES[role],
    horizontal: isFigure ? "right" : "left",
    vertical: isHead && isInFront !== true ? "center" : "top",
    ...(isFigure || isHead ? {} : { indent: 1 }),
    ...(wrap ? { wraps: true } : {}),
    ...(format === undefined ? {} : { format }),
  };
}
