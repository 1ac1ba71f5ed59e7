import type { BladeStatus } from "../../core/blade/status";
import type { Hardening } from "../../core/hardening/hardens";

/** Colours of a planning workbook, the same in every host. */
export const COLORS = {
  ink: "#1c2126",
  muted: "#565e66",
  head: "#e8ebee",
  /** The shade of cells a smith fills in; the word in the row of marks says the same. */
  yours: "#fdf3d8",
  line: "#c3c9cf",
} as const;

const [RED, BLUE, GREY, AMBER, GREEN] = ["#f9dcd3", "#dce6f7", "#e3e3de", "#fbe9b7", "#dcefdc"];

type Words = readonly (readonly [word: string, fill: string])[];

/** Colour comes on top of the words, in this order; each status reads without it. */
export const CHECK_COLORS: Words = [
  ["HIGH", RED],
  ["LOW", BLUE],
  ["FAIL", RED],
  ["CHECK", AMBER],
  ["CHANGED", AMBER],
  ["TWICE", RED],
  ["OK", GREEN],
  ["PASS", GREEN],
];

const OF_A_BLADE: Readonly<Record<BladeStatus | Hardening["word"], string>> = {
  "likely inside": AMBER,
  inside: GREEN,
  uncertain: AMBER,
  "too hard": RED,
  "too soft": BLUE,
  "out of reach": RED,
  "not known": GREY,
  "hardens through": GREEN,
  "edge only": GREEN,
  marginal: AMBER,
  "does not harden through": RED,
  "does not harden": RED,
  "not judged": GREY,
};

/** What is said of a blade against its band and of its hardening; the longer word first where one holds another. */
export const BLADE_COLORS: Words = Object.entries(OF_A_BLADE);
