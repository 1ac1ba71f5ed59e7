import table from "../../data/inspection/test-thickness.json";
import { checkRange, relation } from "../relation";
import { number, records } from "../table";
import { type Worded, wordFinder } from "../word-list";

const printed = records(table, { thicknessMm: number, hrc: number });
type Point = (typeof printed)[number];

const LIMIT = { label: "hardness", unit: "HRC", min: 20, max: 69 };
const OUTPUT = { label: "least thickness", unit: "mm" };

/** The printed table of ASTM E18. */
export const THICKNESS_TABLE = relation({
  title: "Least thickness for a Rockwell C test, printed table",
  source: "astm-e18-thickness",
  locator: table.locator,
  evidence: "standard",
  inputs: { hrc: LIMIT },
  output: OUTPUT,
  error: { size: null, unit: "mm", kind: "a rule; the mark must not show on the other side" },
});

/** Ten times the depth that the cone leaves. */
export const TEN_TIMES_DEPTH = relation({
  ...THICKNESS_TABLE,
  title: "Least thickness for a Rockwell C test, ten times the depth of the mark",
  source: "iso-6508-thickness",
  locator: "depth (100 - HRC) × 0.002 mm",
});

export interface ThicknessRule extends Worded {
  /** Thinnest steel that may be tested [mm] at a hardness [HRC]. */
  readonly least: (hrc: number) => number;
}

function byTable(hrc: number): number {
  const position = printed.findIndex((point) => point.hrc <= hrc);
  const softer = printed[position] as Point;
  const harder = printed[Math.max(0, position - 1)] as Point;
  if (harder.hrc === softer.hrc) return softer.thicknessMm;
  const share = (hrc - softer.hrc) / (harder.hrc - softer.hrc);
  return softer.thicknessMm + share * (harder.thicknessMm - softer.thicknessMm);
}

function byDepth(hrc: number): number {
  return 10 * (100 - hrc) * 0.002;
}

/** The two published rules, and the safe choice between them. */
export const THICKNESS_RULES: readonly ThicknessRule[] = [
  { word: "larger", aliases: ["safe"], least: (hrc) => Math.max(byTable(hrc), byDepth(hrc)) },
  { word: "ASTM E18", aliases: ["E18", "table"], least: byTable },
  { word: "ISO 6508", aliases: ["ten times depth", "6508"], least: byDepth },
];

/**
 * Finds a rule for the thinnest piece that may be tested.
 *
 * @throws NotAvailable naming the rules that fit.
 */
export const findThicknessRule = wordFinder(THICKNESS_RULES, {
  noun: "thickness rule",
  listedBy: "the help of TEST_THICKNESS",
});

/**
 * Thinnest steel on which a Rockwell C reading counts.
 *
 * @param hrc - Expected hardness, 20 to 69 [HRC]
 * @param rule - One of `THICKNESS_RULES`.
 * @returns Thickness [mm]
 * @throws NotAvailable outside the printed range.
 * Error and source: {@link THICKNESS_TABLE}, {@link TEN_TIMES_DEPTH}.
 */
export function testThickness(hrc: number, rule: ThicknessRule): number {
  checkRange(THICKNESS_TABLE, "hrc", hrc);
  return rule.least(hrc);
}
