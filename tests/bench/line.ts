/** One line of the report: a figure beside its budget, both in one unit; no budget where the figure only informs. */
export interface BenchLine {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  /** The most that is allowed. */
  readonly budget?: number | undefined;
}

/** Growth counts as linear up to this power: times of a few runs scatter, and caches fill as sizes grow. */
export const LINEAR = 1.15;

/** The power with which a time grows with a size, from two of each. */
export function growthLine(
  what: string,
  sizes: readonly [number, number],
  times: readonly [number, number],
): BenchLine {
  const value = Math.log(times[1] / times[0]) / Math.log(sizes[1] / sizes[0]);
  return { what: `${what}, growth from ${sizes[0]} to ${sizes[1]}`, value, unit: "power", budget: LINEAR };
}

export const isMissed = ({ value, budget }: BenchLine): boolean => budget !== undefined && !(value <= budget);

/** Zeros behind the point say nothing; those before it do. */
const figure = (value: number) =>
  value
    .toPrecision(value >= 1000 ? 4 : 3)
    .replace(/(\.\d*?)0+$/, "$1")
    .replace(/\.$/, "");

/** Prints the lines; those over their budget are marked and listed again at the end. */
export function report(lines: readonly BenchLine[]): number {
  const width = Math.max(...lines.map(({ what }) => what.length));
  for (const line of lines) {
    const { what, value, unit, budget } = line;
    const limit = budget === undefined ? "" : `≤ ${budget}${isMissed(line) ? "  MISSED" : ""}`;
    console.log(`${what.padEnd(width)}  ${`${figure(value)} ${unit}`.padStart(18)}  ${limit}`);
  }
  const missed = lines.filter(isMissed);
  console.log(missed.length === 0 ? "every budget met" : `${missed.length} budgets missed`);
  return missed.length === 0 ? 0 : 1;
}
