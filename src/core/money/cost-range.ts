import { relation } from "../relation";
import { crossing } from "../root";
import { startsNear, yieldEnough } from "../run/binomial";
import { BINOMIAL_STARTS, startsNeeded } from "../run/starts";
import { chanceOfSum, chanceUpTo, checkTriangle, scaled, slices, type Triangle } from "./triangle";

/** Band on the cost of one piece. */
export const COST_BAND = relation({
  title: "Band on the cost of one good piece",
  source: "triangular",
  locator:
    "yield, hours and material each triangular between low and high with its peak at likely, independent",
  evidence: "standard",
  inputs: { yield: BINOMIAL_STARTS.inputs.yield },
  output: { label: "cost", unit: "money" },
  error: {
    size: null,
    unit: "money",
    kind: "holds nine lots in ten if the three ranges do; ends computed to a thousandth of the width of the band",
  },
  note:
    "Fixed rule: each number to start weighed by the chance of its yields, the wider of labour and material by its " +
    "formula, the other in 64 slices of equal chance, so the same figures give the same band every time. The number " +
    "to start follows the yield. Where all prices rise together the cost goes towards worst. The luck of a single lot is not in it: see CHANCE_OF_ENOUGH.",
});

/** A lot whose yield, hours and material are not certain. Money in one currency. */
export interface UncertainLot {
  /** Good pieces wanted, whole, 1 and more [-]. */
  readonly good: number;
  /** Share that comes out good, above 0 to 1 [-]. */
  readonly yieldShare: Triangle;
  /** Of one start, 0 and more [h]. */
  readonly hours: Triangle;
  /** Cost of an hour of work [money]. */
  readonly hourRate: number;
  /** Of one start [money]. */
  readonly material: Triangle;
  /** All that is paid once a lot [money]. */
  readonly lotCost: number;
  /** Chance wanted of enough good pieces, above 0 to below 1 [-]. */
  readonly confidence: number;
}

/** Cost of one good piece. */
export interface CostRange {
  /** Lower end of the band that holds at least nine lots in ten [money]. */
  readonly low: number;
  /** With every figure at its likeliest [money]. */
  readonly likely: number;
  /** Upper end of that band [money]. */
  readonly high: number;
  /** With every figure at its best [money]. */
  readonly best: number;
  /** With every figure at its worst [money]. */
  readonly worst: number;
  /** Which figure moves the cost most on its own. */
  readonly mover: "yield" | "hours" | "material" | "nothing";
  /** Least cost while that figure alone moves [money]. */
  readonly moverLow: number;
  /** Most cost while that figure alone moves [money]. */
  readonly moverHigh: number;
}

/** Share left out on either side of the band. */
const TAIL = 0.05;
/** Up to this many numbers to start each is weighed exactly; beyond, one more or less hardly moves the cost. */
const MAX_COUNTS = 200;
/** Costs that differ by less than this share of the worst need no telling apart. */
const CLOSE = 1e-12;

interface Draw {
  readonly starts: number;
  readonly hours: number;
  readonly material: number;
}

function unitCost({ good, hourRate, lotCost }: UncertainLot, { starts, hours, material }: Draw): number {
  return (lotCost + starts * (hours * hourRate + material)) / good;
}

/** Starts at the lowest, likeliest and highest yield. */
function startsOf({ good, yieldShare, confidence }: UncertainLot): Triangle {
  const at = (share: number) => startsNeeded(good, share, confidence);
  return { low: at(yieldShare.low), likely: at(yieldShare.likely), high: at(yieldShare.high) };
}

/** Numbers to start at yields of equal chance, from the lowest yield on: each is near the one before. */
function sampledStarts({ good, yieldShare, confidence }: UncertainLot, fewest: number, most: number) {
  let [before, count] = [yieldShare.low, most];
  return slices(yieldShare, MAX_COUNTS).map((share) => {
    const guess = Math.min(most, Math.max(fewest, Math.round((count * before) / share)));
    count = startsNear(good, share, confidence, guess, [fewest, most]);
    before = share;
    return [count, 1 / MAX_COUNTS] as const;
  });
}

/** Numbers to start over the yields that may be, with the chance of each. */
function startChances(
  lot: UncertainLot,
  { high: fewest, low: most }: Triangle,
): readonly (readonly [count: number, chance: number])[] {
  const { good, yieldShare, confidence } = lot;
  if (most - fewest > MAX_COUNTS) return sampledStarts(lot, fewest, most);
  const chances: [number, number][] = [];
  let fewer = 0;
  let enough = yieldShare.high;
  for (let count = fewest; count <= most; count += 1) {
    if (count < most) enough = yieldEnough(count, good, confidence, yieldShare.low, enough);
    const upTo = count === most ? 1 : 1 - chanceUpTo(yieldShare, enough);
    chances.push([count, upTo - fewer]);
    fewer = upTo;
  }
  return chances;
}

/** Chance that one good piece costs no more than a sum. */
function chanceOf(lot: UncertainLot, needed: Triangle): (cost: number) => number {
  const { good, hours, hourRate, material, lotCost } = lot;
  const labour = scaled(hours, hourRate);
  const starts = startChances(lot, needed);
  return (cost) => {
    let sum = 0;
    for (const [count, chance] of starts)
      sum += chance * chanceOfSum(labour, material, (cost * good - lotCost) / count);
    return sum;
  };
}

function costAt(chanceUpToCost: (cost: number) => number, chance: number, from: number, to: number): number {
  if (from >= to) return to;
  return crossing((cost) => chanceUpToCost(cost) - chance, from, to, CLOSE * to);
}

function mover(lot: UncertainLot, starts: Triangle, likely: Draw) {
  const ranges = { starts, hours: lot.hours, material: lot.material };
  const moves = (["starts", "hours", "material"] as const).map((key) => {
    const ends = [ranges[key].low, ranges[key].high].map((value) =>
      unitCost(lot, { ...likely, [key]: value }),
    );
    const name = key === "starts" ? ("yield" as const) : key;
    return { mover: name, moverLow: Math.min(...ends), moverHigh: Math.max(...ends) };
  });
  const widest = moves.reduce((most, move) =>
    move.moverHigh - move.moverLow > most.moverHigh - most.moverLow ? move : most,
  );
  return widest.moverHigh > widest.moverLow ? widest : { ...widest, mover: "nothing" as const };
}

/**
 * What one good piece may cost where yield, hours and material are known as low, likely and high.
 *
 * @param lot - Amounts in one currency, hours [h], yields 0.01 to 1.
 * @returns Amounts: the band between the costs that one lot in twenty stays under and one in twenty exceeds,
 *   widened to hold the likely cost where it lies outside; the same for the same figures every time.
 * @throws InvalidValue for figures out of order or outside the limits of the binomial.
 * Error and source: {@link COST_BAND}.
 */
export function costRange(lot: UncertainLot): CostRange {
  const { yieldShare, hours, material } = lot;
  checkTriangle(yieldShare, "yield");
  checkTriangle(hours, "hours");
  checkTriangle(material, "material");
  const starts = startsOf(lot);
  const draw = { starts: starts.likely, hours: hours.likely, material: material.likely };
  const likely = unitCost(lot, draw);
  const best = unitCost(lot, { starts: starts.high, hours: hours.low, material: material.low });
  const worst = unitCost(lot, { starts: starts.low, hours: hours.high, material: material.high });
  const chance = chanceOf(lot, starts);
  return {
    low: Math.min(likely, costAt(chance, TAIL, best, worst)),
    likely,
    high: Math.max(likely, costAt(chance, 1 - TAIL, best, worst)),
    best,
    worst,
    ...mover(lot, starts, draw),
  };
}
