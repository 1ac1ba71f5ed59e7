/** Colours of a planning workbook, the same in every host. */
export const COLORS = {
  ink: "#1c2126",
  muted: "#565e66",
  head: "#e8ebee",
  /** The shade of cells a smith fills in; the word in the row of marks says the same. */
  yours: "#fdf3d8",
  line: "#c3c9cf",
} as const;

/** Colour comes on top of the words, in this order; each status reads without it. */
export const STATUS_COLORS = [
  ["HIGH", "#f9dcd3"],
  ["LOW", "#dce6f7"],
  ["DOUBTFUL", "#e3e3de"],
  ["FAIL", "#f9dcd3"],
  ["CHECK", "#fbe9b7"],
  ["CHANGED", "#fbe9b7"],
  ["TWICE", "#f9dcd3"],
  ["OK", "#dcefdc"],
  ["PASS", "#dcefdc"],
] as const;
