import type { Role } from "../model/sheet-model";
import type { RunLine } from "./run-r07/run";

/** Who fills a column: `type` the smith, `calc` the sheet, `either` the sheet until the smith types over it. */
export type Filled = "type" | "calc" | "either";

/** Every column: what the smith fills in, and what the sheet works out. */
export type ColumnKey =
  | keyof RunLine
  | "starts"
  | "mass"
  | "temperC"
  | "temperF"
  | "low"
  | "high"
  | "band"
  | "status"
  | "caution"
  | "estimate";

/** Address of another column's cell in the same row. */
export type CellOf = (key: ColumnKey) => string;

export interface PlanningColumn {
  readonly heading: string;
  readonly filled: Filled;
  readonly width: number;
  readonly role?: Role;
  readonly format?: string;
  readonly wrap?: boolean;
  readonly content: (line: RunLine, at: CellOf) => number | string | null;
}

const calc = (
  heading: string,
  width: number,
  formula: (at: CellOf) => string,
  rest: Partial<PlanningColumn> = {},
): PlanningColumn => ({ heading, width, filled: "calc", content: (_, at) => formula(at), ...rest });

const typed = <K extends keyof RunLine>(
  key: K,
  heading: string,
  width: number,
  rest: Partial<PlanningColumn> = {},
): PlanningColumn => ({ heading, width, filled: "type", content: (line) => line[key], ...rest });

const range = (at: CellOf) => `BLADE.TEMPERED_RANGE(${at("steel")},${at("temperC")})`;
const band = (at: CellOf) => `BLADE.BAND(${at("use")})`;

function mass(at: CellOf): string {
  const keys = [
    "length",
    "width",
    "thickness",
    "grind",
    "tipWidth",
    "tipThickness",
    "edge",
    "steel",
  ] as const;
  return `=BLADE.MASS(${keys.map(at).join(",")})`;
}

function assess(at: CellOf): string {
  const keys = ["use", "steel", "low", "high", "length", "quench", "temperC"] as const;
  return `BLADE.ASSESS(${keys.map(at).join(",")})`;
}

const WHOLE = { format: "0" };
const SIZE = { format: "0.0" };

/**
 * The columns of the planning sheet, left to right: what a smith decides by comes first, so that it stands
 * beside the pane without scrolling; sizes and the order follow. One formula a cell, none that spills.
 */
export const planningColumns: Readonly<Record<ColumnKey, PlanningColumn>> = {
  line: typed("line", "Line", 36, { role: "label" }),
  item: typed("item", "Item", 92, { role: "label", wrap: true }),
  steel: typed("steel", "Steel", 84),
  starts: calc(
    "Starts",
    46,
    (at) => `=BLADE.STARTS(${at("good")},${at("yield")},${at("confidence")})`,
    WHOLE,
  ),
  mass: calc("Mass g", 46, mass, WHOLE),
  aim: typed("aim", "Aim HRC", 42, WHOLE),
  temperC: calc("Temper °C", 56, (at) => `=ROUND(BLADE.TEMPER_FOR(${at("steel")},${at("aim")}),0)`, {
    ...WHOLE,
    filled: "either",
  }),
  temperF: calc("Temper °F", 56, (at) => `=ROUND(${at("temperC")}*9/5+32,0)`, WHOLE),
  low: calc("HRC low", 42, (at) => `=INDEX(${range(at)},1,1)`, WHOLE),
  high: calc("HRC high", 42, (at) => `=INDEX(${range(at)},1,3)`, WHOLE),
  band: calc("Band HRC", 52, (at) => `=INDEX(${band(at)},1,1)&"–"&INDEX(${band(at)},1,3)`),
  status: calc("Against the band", 84, (at) => `=INDEX(${assess(at)},1,1)`, { wrap: true }),
  caution: calc("Caution", 220, (at) => `=INDEX(${assess(at)},1,2)`, { role: "words", wrap: true }),
  estimate: calc(
    "How good the hardness is",
    260,
    (at) => `=TEXTJOIN("; ",TRUE,INDEX(${range(at)},1,4),INDEX(${range(at)},1,5))`,
    {
      role: "words",
      wrap: true,
    },
  ),
  use: typed("use", "Use", 172, { wrap: true }),
  quench: typed("quench", "Quench", 96, { wrap: true }),
  good: typed("good", "Good wanted", 62, WHOLE),
  yield: typed("yield", "Yield", 52, { format: "0.00" }),
  confidence: typed("confidence", "Confidence", 80, { format: "0.00" }),
  grind: typed("grind", "Grind", 86),
  length: typed("length", "Length mm", 62, WHOLE),
  width: typed("width", "Width mm", 60, SIZE),
  thickness: typed("thickness", "Thickness mm", 76, SIZE),
  tipWidth: typed("tipWidth", "Tip width mm", 68, SIZE),
  tipThickness: typed("tipThickness", "Tip thickness mm", 76, SIZE),
  edge: typed("edge", "Behind edge mm", 74, SIZE),
};

/** In their order on the sheet. */
export const columnKeys = Object.keys(planningColumns) as readonly ColumnKey[];
