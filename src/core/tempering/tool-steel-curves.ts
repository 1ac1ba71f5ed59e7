import { type Relation, relation } from "../relation";
import type { SourceKey } from "../sources";
import type { Steel } from "../steel/steel";
import { polynomialCurve } from "./curve";
import { CURVE_BANDS } from "./fits";
import { hollomonJaffe } from "./hollomon-jaffe";
import type { TemperModel } from "./model";
import { HOT_TABLE_HALF_WIDTH } from "./table-model";

/** A curve through handbook rows that may be fitted and cited, but are not held here. */
interface ToolSteelCurve {
  readonly source: SourceKey;
  /** Tempers of the rows [°C]. */
  readonly temperC: readonly [least: number, most: number];
  /** Hardness over powers of the Hollomon-Jaffe parameter less 12, made by `tests/fitting/fit-tool-steels.ts`; of S1, S5, L2 and L6 in 2026, from rows that may not be held. */
  readonly coefficients: readonly number[];
  /** Half-width that covers 90 % of rows of other sources [HRC]. */
  readonly halfWidth: number;
}

const TOOL_STEEL_CURVES: Readonly<Record<string, ToolSteelCurve>> = {
  S1: curve("asm-handbook-1", [205, 650], [52.2335, -1.7423, -0.0574]),
  S5: curve("asm-handbook-1", [205, 650], [55.2944, -2.1404, -0.3063]),
  L2: curve("asm-handbook-1", [205, 650], [49.6272, -2.3578, -0.3236]),
  // Two tables of the Chinese handbooks lie 3 to 5 HRC apart from 420 °C up: the curve lies between.
  "60Si2Mn": curve("chinese-tempering-tables", [180, 580], [52.8046, -2.5317, -0.5982, -0.1215], 3.5),
  CrWMn: curve("chinese-tempering-tables", [180, 540], [52.0146, -2.7118, -0.085]),
  // A merchant's sheet reads 2 HRC over the handbook at 315 °C and 4 over it at 425 °C: the curve lies between.
  L6: curve("l6-two-sheets", [148, 540], [51.6195, -2.6671, -0.0112], 3.5),
  A6: curve("recalled-hardening", [150, 425], [54.768, -1.0883, 0.0409], 3.5),
};

function curve(
  source: SourceKey,
  temperC: readonly [number, number],
  coefficients: readonly number[],
  halfWidth = 3,
): ToolSteelCurve {
  return { source, temperC, coefficients, halfWidth };
}

/** The sheets behind these curves temper below their first row too: this far the curve is carried [°C]. */
const CARRIED_DOWN_TO_C = 150;

function coolest({ temperC }: ToolSteelCurve): number {
  return Math.min(CARRIED_DOWN_TO_C, temperC[0]);
}

const HOURS = { rows: 2, least: 0.5, most: 12 };
const CENTRE = 12;

function relationOf(name: string, held: ToolSteelCurve): Relation {
  const { source, temperC, halfWidth } = held;
  return relation({
    title: `Hardness after temper of ${name}`,
    source,
    locator: "rows of the grade, polynomial in the Hollomon-Jaffe parameter",
    evidence: "fitted",
    inputs: { temperC: { label: "temper", unit: "°C", min: coolest(held), max: temperC[1] } },
    output: { label: "hardness", unit: "HRC" },
    error: { size: halfWidth, unit: "HRC", kind: "half-width that covers 90 % of rows of other sources" },
    note: `No time printed, 2 h taken; below ${temperC[0]} °C the curve is carried on.`,
  });
}

/** The model of a tool steel with such a curve; `undefined` for every other grade. */
export function toolSteelModel(steel: Steel, designation: string): TemperModel | undefined {
  const held = TOOL_STEEL_CURVES[designation];
  if (held === undefined) return undefined;
  const [from, to] = [coolest(held), held.temperC[1]].map((celsius) => hollomonJaffe(celsius, HOURS.rows));
  return {
    steel,
    curve: polynomialCurve(held.coefficients, CENTRE, from as number, to as number),
    minC: coolest(held),
    maxC: held.temperC[1],
    minHours: HOURS.least,
    maxHours: HOURS.most,
    halfWidthAt: (celsius) =>
      celsius <= CURVE_BANDS.bladeC ? held.halfWidth : Math.max(held.halfWidth, HOT_TABLE_HALF_WIDTH),
    basisAt: () => `curve fitted to handbook rows of ${designation}`,
    assumptions: [],
    relations: [relationOf(designation, held)],
  };
}
