import { startsNeeded } from "../run/starts";
import { chanceUpTo, checkTriangle, scaled, slices, spread, type Triangle } from "./triangle";

/** A lot whose yield, hours and material are not certain. Money in one currency. */
export interface UncertainLot {
  /** Good pieces wanted. */
  readonly good: number;
  readonly yieldShare: Triangle;
  /** Of one start, h. */
  readonly hours: Triangle;
  readonly hourRate: number;
  /** Of one start. */
  readonly material: Triangle;
  /** All that is paid once a lot. */
  readonly lotCost: number;
  readonly confidence: number;
}

/** Cost of one good piece. */
export interface CostRange {
  /** Ends of the band that holds at least nine lots in ten. */
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  /** With everything at its best, and at its worst. */
  readonly best: number;
  readonly worst: number;
  /** Which figure moves the cost most on its own, and from where to where. */
  readonly mover: "yield" | "hours" | "material" | "nothing";
  readonly moverLow: number;
  readonly moverHigh: number;
}

/** Share left out on either side of the band. */
const TAIL = 0.05;
/** Slices of equal chance for the narrower of labour and material. */
const SLICES = 64;
/** Up to this many numbers to start each is weighed exactly; beyond, one more or less hardly moves the cost. */
const MOST_COUNTS = 200;
const YIELD_HALVINGS = 30;
/** Halvings of the span between best and worst. */
const HALVINGS = 50;

type Draw = Readonly<Record<"yieldShare" | "hours" | "material", number>>;

function unitCost({ good, hourRate, lotCost, confidence }: UncertainLot, draw: Draw): number {
  const starts = startsNeeded(good, draw.yieldShare, confidence);
  return (lotCost + starts * (draw.hours * hourRate + draw.material)) / good;
}

/** Lowest yield at which a number of starts is enough: between the ends of the range, by halving. */
function yieldFor(count: number, { good, yieldShare, confidence }: UncertainLot): number {
  let [low, high] = [yieldShare.low, yieldShare.high];
  for (let step = 0; step < YIELD_HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (startsNeeded(good, middle, confidence) > count) low = middle;
    else high = middle;
  }
  return high;
}

/** Numbers to start over the yields that may be, with the chance of each. */
function startChances(lot: UncertainLot): readonly (readonly [count: number, chance: number])[] {
  const { good, yieldShare, confidence } = lot;
  const fewest = startsNeeded(good, yieldShare.high, confidence);
  const most = startsNeeded(good, yieldShare.low, confidence);
  if (most - fewest > MOST_COUNTS) {
    return slices(yieldShare, MOST_COUNTS).map((share) => [
      startsNeeded(good, share, confidence),
      1 / MOST_COUNTS,
    ]);
  }
  const chances: [number, number][] = [];
  let fewer = 0;
  for (let count = fewest; count <= most; count += 1) {
    const upTo = count === most ? 1 : 1 - chanceUpTo(yieldShare, yieldFor(count, lot));
    chances.push([count, upTo - fewer]);
    fewer = upTo;
  }
  return chances;
}

/** Chance that one good piece costs no more than a sum: the wider of labour and material by formula, the other in slices. */
function chanceOf(lot: UncertainLot): (cost: number) => number {
  const { good, hours, hourRate, material, lotCost } = lot;
  const labour = scaled(hours, hourRate);
  const [wide, narrow] = spread(labour) > spread(material) ? [labour, material] : [material, labour];
  const others = spread(narrow) === 0 ? [narrow.likely] : slices(narrow, SLICES);
  const starts = startChances(lot);
  return (cost) => {
    let sum = 0;
    for (const [count, chance] of starts) {
      const room = (cost * good - lotCost) / count;
      let within = 0;
      for (const other of others) within += chanceUpTo(wide, room - other);
      sum += (chance * within) / others.length;
    }
    return sum;
  };
}

function costAt(chanceUpToCost: (cost: number) => number, chance: number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (chanceUpToCost(middle) < chance) low = middle;
    else high = middle;
  }
  return high;
}

function mover(lot: UncertainLot, likely: Draw) {
  const moves = (["yieldShare", "hours", "material"] as const).map((key) => {
    const ends = [lot[key].low, lot[key].high].map((value) => unitCost(lot, { ...likely, [key]: value }));
    const name = key === "yieldShare" ? ("yield" as const) : key;
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
 * @returns The band between the costs that one lot in twenty stays under and one in twenty exceeds,
 *   widened to hold the likely cost where it lies outside; the same for the same figures every time.
 * @throws InvalidValue for figures out of order or outside the limits of the binomial.
 */
export function costRange(lot: UncertainLot): CostRange {
  const { yieldShare, hours, material } = lot;
  checkTriangle(yieldShare, "yield");
  checkTriangle(hours, "hours");
  checkTriangle(material, "material");
  const draw = { yieldShare: yieldShare.likely, hours: hours.likely, material: material.likely };
  const likely = unitCost(lot, draw);
  const best = unitCost(lot, { yieldShare: yieldShare.high, hours: hours.low, material: material.low });
  const worst = unitCost(lot, { yieldShare: yieldShare.low, hours: hours.high, material: material.high });
  const chance = chanceOf(lot);
  return {
    low: Math.min(likely, costAt(chance, TAIL, best, worst)),
    likely,
    high: Math.max(likely, costAt(chance, 1 - TAIL, best, worst)),
    best,
    worst,
    ...mover(lot, draw),
  };
}
