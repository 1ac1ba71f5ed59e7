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

/** True where a figure cannot be: nothing takes less than no time, so the measuring itself went wrong. A power may be below 0. */
const isFaulty = ({ value, unit }: BenchLine): boolean =>
  !Number.isFinite(value) || (value < 0 && unit !== "power");

export const isMissed = (line: BenchLine): boolean =>
  isFaulty(line) || (line.budget !== undefined && line.value > line.budget);

function verdict(line: BenchLine): string {
  const limit = line.budget === undefined ? "" : `≤ ${line.budget}`;
  if (isFaulty(line)) return `${limit}  FAULT of the measuring`;
  return isMissed(line) ? `${limit}  MISSED` : limit;
}

/** Zeros behind the point say nothing; those before it do. */
const figure = (value: number) =>
  value
    .toPrecision(Math.abs(value) >= 1000 ? 4 : 3)
    .replace(/(\.\d*?)0+$/, "$1")
    .replace(/\.$/, "");

/** Prints the lines; those over their budget are marked and listed again at the end. */
export function report(lines: readonly BenchLine[]): number {
  const width = Math.max(...lines.map(({ what }) => what.length));
  for (const line of lines) {
    const { what, value, unit } = line;
    console.log(`${what.padEnd(width)}  ${`${figure(value)} ${unit}`.padStart(18)}  ${verdict(line)}`);
  }
  const missed = lines.filter(isMissed);
  console.log(
    missed.length === 0 ? "every budget met" : `${missed.length} budgets missed or figures that cannot be`,
  );
  return missed.length === 0 ? 0 : 1;
}
