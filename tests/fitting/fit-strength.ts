import { findConversionTable } from "../../src/core/hardness/conversion-tables";
import { convertHardness } from "../../src/core/hardness/convert";
import { strengthOf } from "../../src/core/hardness/strength";
import { leastSquares } from "./least-squares";
import file from "./strength-rows.json";

export interface StrengthRow {
  readonly source: string;
  readonly steel: string;
  readonly temperC: number;
  readonly hv: number;
  readonly hrc: number;
  readonly tensileMPa: number;
  readonly yieldMPa: number;
}

const LOW_ALLOY = findConversionTable("low alloy");

export const STRENGTH_ROWS: readonly StrengthRow[] = file.rows.map(
  ([source, steel, temperC, hrc, tensileMPa, yieldMPa]) =>
    ({
      source,
      steel,
      temperC,
      hrc,
      hv: convertHardness(hrc as number, "HRC", "HV", LOW_ALLOY),
      tensileMPa,
      yieldMPa,
    }) as StrengthRow,
);

/** The line through measured rows stands alone from here [HV]; up to 400 HV the table of the standard does. */
const LINE_FROM = 440;
const TABLE_TO = 400;

export interface StrengthFit {
  /** Tensile strength [MPa] over Vickers hardness: constant and slope. */
  readonly line: readonly number[];
  /** Yield over tensile strength at each knot. */
  readonly ratios: readonly number[];
}

const KNOTS = [205, 300, 415];

function hats(temperC: number): number[] {
  const at = Math.min(Math.max(temperC, KNOTS[0] as number), KNOTS[KNOTS.length - 1] as number);
  const right = Math.max(
    1,
    KNOTS.findIndex((knot) => knot >= at),
  );
  const [from, to] = [KNOTS[right - 1] as number, KNOTS[right] as number];
  const share = (at - from) / (to - from);
  return KNOTS.map((_, i) => (i === right ? share : i === right - 1 ? 1 - share : 0));
}

export function fitStrength(rows: readonly StrengthRow[]): StrengthFit {
  const hard = rows.filter(({ hv }) => hv >= LINE_FROM);
  return {
    line: leastSquares(hard.map(({ hv, tensileMPa }) => ({ terms: [1, hv], y: tensileMPa, weight: 1 }))),
    ratios: leastSquares(
      rows.map((row) => ({ terms: hats(row.temperC), y: row.yieldMPa / row.tensileMPa, weight: 1 })),
    ),
  };
}

/** Tensile strength by a fit: the shipped blend of table and line, with the line of the fit. */
function tensileBy({ line: [a = 0, b = 0] }: StrengthFit, { hv, hrc }: StrengthRow): number {
  const share = Math.min(1, Math.max(0, (hv - TABLE_TO) / (LINE_FROM - TABLE_TO)));
  const table = share === 1 ? 0 : (strengthOf(Math.min(hrc, 40.8), "HRC").tensileMPa ?? Number.NaN);
  return (1 - share) * table + share * (a + b * hv);
}

/** What a strength is missed by when the fit knows nothing of the row's source [share of the answer]. */
export function strengthMissesLeftOut(): { row: StrengthRow; tensile: number; yieldMiss: number }[] {
  return [...new Set(STRENGTH_ROWS.map(({ source }) => source))].flatMap((source) => {
    const fit = fitStrength(STRENGTH_ROWS.filter((row) => row.source !== source));
    return STRENGTH_ROWS.filter((row) => row.source === source).map((row) => {
      const tensile = tensileBy(fit, row);
      const yieldMPa =
        tensile * hats(row.temperC).reduce((sum, hat, i) => sum + hat * (fit.ratios[i] ?? 0), 0);
      return {
        row,
        tensile: (tensile - row.tensileMPa) / tensile,
        yieldMiss: (yieldMPa - row.yieldMPa) / yieldMPa,
      };
    });
  });
}
