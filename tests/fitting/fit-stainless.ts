import { carbideShare, stainlessTerms } from "../../src/core/hardening/stainless";
import { findSteel } from "../../src/core/steel/find";
import { hollomonJaffe } from "../../src/core/tempering/hollomon-jaffe";
import { leastSquares } from "./least-squares";
import file from "./stainless-rows.json";

export interface StainlessRow {
  readonly source: string;
  readonly steel: string;
  readonly hardenC: number;
  readonly temperC: number;
  readonly hours: number;
  readonly hrc: number;
}

export const STAINLESS_ROWS: readonly StainlessRow[] = file.rows.map(
  ([source, steel, hardenC, temperC, hours, hrc]) =>
    ({ source, steel, hardenC, temperC, hours, hrc }) as StainlessRow,
);

/** Tempers of 1 h between which the softening runs straight [°C]. */
const KNOTS = [150, 200, 300, 400, 450, 500, 550, 600, 650];
const PARAMETERS = KNOTS.map((celsius) => hollomonJaffe(celsius, 1));

/** How far a parameter belongs to each knot: straight lines between them. */
function hats(parameter: number): number[] {
  const at = Math.min(Math.max(parameter, PARAMETERS[0] as number), PARAMETERS[KNOTS.length - 1] as number);
  const right = Math.max(
    1,
    PARAMETERS.findIndex((knot) => knot >= at),
  );
  const [from, to] = [PARAMETERS[right - 1] as number, PARAMETERS[right] as number];
  const share = (at - from) / (to - from);
  return KNOTS.map((_, i) => (i === right ? share : i === right - 1 ? 1 - share : 0));
}

const HRC_PER_PERCENT_AUSTENITE = 0.15;

/** Blades of stainless steel are tempered up to here [°C]; such rows count double. */
export const BLADE_TEMPER_C = 250;
const BLADE_WEIGHT = 2;

function termsOf(row: StainlessRow) {
  const { martensite, carbide, austenite } = stainlessTerms(findSteel(row.steel), row.hardenC, 20);
  const [, ...softening] = hats(hollomonJaffe(row.temperC, row.hours));
  const terms = [1, martensite, carbideShare(carbide), ...softening.map((share) => -share)];
  const weight = row.temperC <= BLADE_TEMPER_C ? BLADE_WEIGHT : 1;
  return { terms, y: row.hrc + HRC_PER_PERCENT_AUSTENITE * austenite, weight };
}

export interface StainlessFit {
  readonly level: readonly number[];
  readonly softening: readonly (readonly [celsius: number, hrc: number])[];
}

/** Least squares over rows: the level first, then what is lost at each knot. */
export function fitStainless(rows: readonly StainlessRow[]): StainlessFit {
  const found = leastSquares(rows.map(termsOf));
  const softening = KNOTS.map((celsius, i) => [celsius, i === 0 ? 0 : (found[i + 2] as number)] as const);
  return { level: found.slice(0, 3), softening };
}

/** Answer of a fit less the row [HRC]. */
export function missOf(fit: StainlessFit, row: StainlessRow): number {
  const { terms, y } = termsOf(row);
  const all = [...fit.level, ...fit.softening.slice(1).map(([, hrc]) => hrc)];
  return terms.reduce((sum, term, i) => sum + term * (all[i] as number), 0) - y;
}

/** One published series: the rows of one source on one steel. */
const seriesOf = ({ source, steel }: StainlessRow) => `${source} ${steel}`;

/** What every row is missed by when the fit knows nothing of its series [HRC]. */
export function missesLeftOut(): { row: StainlessRow; miss: number }[] {
  return [...new Set(STAINLESS_ROWS.map(seriesOf))].flatMap((series) => {
    const fit = fitStainless(STAINLESS_ROWS.filter((row) => seriesOf(row) !== series));
    const left = STAINLESS_ROWS.filter((row) => seriesOf(row) === series);
    return left.map((row) => ({ row, miss: missOf(fit, row) }));
  });
}
