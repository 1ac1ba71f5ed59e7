import { readFileSync } from "node:fs";
import type { Measured } from "./measured";
import { spread } from "./statistics";

/** What a check may not fall below: rows that it holds, and how far they may be missed. */
export interface Ceiling {
  readonly rows: number;
  readonly mean: number;
  readonly rms: number;
  readonly largest: number;
}

const PATH = "tests/accuracy/frozen/checks.json";

export function readCeilings(): Readonly<Record<string, Ceiling>> {
  return JSON.parse(readFileSync(PATH, "utf8")) as Record<string, Ceiling>;
}

/** Rounded up to two significant digits, so that the next build of Node does not fail on the last bit. */
function above(figure: number): number {
  if (figure === 0) return 0;
  const step = 10 ** (Math.floor(Math.log10(figure)) - 1);
  return Number(((Math.floor(figure / step) + 1) * step).toPrecision(2));
}

/** Ceilings as the present state meets them, for a file that is frozen on purpose. */
export function ceilingsOf(all: readonly Measured[]): Record<string, Ceiling> {
  return Object.fromEntries(
    all.map(({ key, errors }) => {
      const { count, meanSize, rms, largest } = spread(errors);
      return [key, { rows: count, mean: above(meanSize), rms: above(rms), largest: above(largest) }];
    }),
  );
}

function faultsOf(measured: Measured, ceiling: Ceiling | undefined): string[] {
  const { key, errors } = measured;
  if (ceiling === undefined) return [`${key}: not frozen yet`];
  if (!errors.every(Number.isFinite)) return [`${key}: a row has no answer`];
  const { count, meanSize, rms, largest } = spread(errors);
  const faults: string[] = [];
  if (count < ceiling.rows) faults.push(`${key}: ${ceiling.rows - count} of ${ceiling.rows} rows dropped`);
  if (meanSize > ceiling.mean) faults.push(`${key}: mean ${meanSize} is over ${ceiling.mean}`);
  if (rms > ceiling.rms) faults.push(`${key}: root mean square ${rms} is over ${ceiling.rms}`);
  if (largest > ceiling.largest) faults.push(`${key}: largest ${largest} is over ${ceiling.largest}`);
  return faults;
}

/** What has got worse than what is frozen, in sentences; a table that has vanished is among them. */
export function faults(
  all: readonly Measured[],
  ceilings: Readonly<Record<string, Ceiling>> = readCeilings(),
): string[] {
  const keys = new Set(all.map(({ key }) => key));
  const lost = Object.keys(ceilings).filter((key) => !keys.has(key));
  return [
    ...lost.map((key) => `${key}: no longer measured`),
    ...all.flatMap((measured) => faultsOf(measured, ceilings[measured.key])),
  ];
}
