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

/** The line through measured rows stands alone from here [HV]. */
const LINE_FROM = 440;

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

/** What the library misses the held rows by [share of the answer]: rows that took part, beside more that are not held. */
export function strengthMisses(): { row: StrengthRow; tensile: number; yieldMiss: number }[] {
  return STRENGTH_ROWS.map((row) => {
    const { tensileMPa = Number.NaN, yieldMPa } = strengthOf(row.hrc, "HRC", row.temperC);
    return {
      row,
      tensile: (tensileMPa - row.tensileMPa) / tensileMPa,
      yieldMiss: (yieldMPa - row.yieldMPa) / yieldMPa,
    };
  });
}
