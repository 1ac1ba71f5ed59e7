/** How far a set of answers lies from what is published. */
export interface Spread {
  readonly count: number;
  /** Mean of answer less published: positive where the library answers too high. */
  readonly bias: number;
  readonly meanSize: number;
  readonly rms: number;
  readonly largest: number;
  /** Place of the largest in the list given. */
  readonly largestAt: number;
}

function mean(figures: readonly number[]): number {
  return figures.reduce((sum, figure) => sum + figure, 0) / figures.length;
}

/** Sums up errors, answer less published, all in one unit. */
export function spread(errors: readonly number[]): Spread {
  const sizes = errors.map(Math.abs);
  const largest = Math.max(...sizes);
  return {
    count: errors.length,
    bias: mean(errors),
    meanSize: mean(sizes),
    rms: Math.sqrt(mean(errors.map((error) => error * error))),
    largest,
    largestAt: sizes.indexOf(largest),
  };
}

/** Share that is true of a list in which `undefined` says that the question does not arise; `undefined` where it never does. */
export function shareOf(held: readonly (boolean | undefined)[]): number | undefined {
  const asked = held.filter((one) => one !== undefined);
  return asked.length === 0 ? undefined : asked.filter(Boolean).length / asked.length;
}
