/** The values that a numeric argument accepts; open ends are replaced by what no shop exceeds. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

const NUMBER = String.raw`(-?\d+(?:\.\d+)?(?:e[+-]?\d+)?)`;
const LOW = new RegExp(`(?:from|above) ${NUMBER}`);
const HIGH = new RegExp(`up to ${NUMBER}`);
const FAR = 1e9;

/** Reads the span from the sentence that a refusal would print; `undefined` where the argument is no number. */
export function spanOf(accepts: string): Span | undefined {
  const low = LOW.exec(accepts)?.[1];
  const high = HIGH.exec(accepts)?.[1];
  if (low === undefined && high === undefined) return undefined;
  return { low: Number(low ?? -FAR), high: Number(high ?? FAR) };
}
