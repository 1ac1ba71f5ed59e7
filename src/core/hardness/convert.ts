import { numberText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import type { Relation } from "../relation";
import { sourceText } from "../sources";
import { CONVERSION_TABLES, type ConversionTable } from "./conversion-tables";
import type { ScaleKey } from "./scales";

const HRC_SPANS = CONVERSION_TABLES.map((table) => {
  const values = (table.columns.HRC ?? []).filter((value) => value !== undefined);
  return { table, min: values[0] ?? null, max: values[values.length - 1] ?? null };
});

/** One relation a table; the ranges of the other scales follow from the Rockwell C span. */
export const CONVERSIONS: readonly Relation[] = HRC_SPANS.map(({ table, min, max }) => ({
  title: `Hardness conversion, ${table.word}: ${table.title}`,
  source: table.source,
  locator: table.locator,
  evidence: "standard",
  inputs: { hrc: { label: "Rockwell C", unit: "HRC", min, max } },
  output: { label: "hardness", unit: "scale asked for" },
  error: { size: 1, unit: "HRC", kind: "within one class of steel; 2 HRC from one class to another" },
  note: "Straight lines between the printed rows; values in brackets are not used.",
}));

/** Corresponding values of two scales, both rising. */
export interface Correspondence {
  readonly from: Float64Array;
  readonly to: Float64Array;
}

/** Fills a gap between two usable values along the Vickers column; the ends stay empty. */
function filled(values: readonly (number | undefined)[], hv: readonly number[]): (number | undefined)[] {
  let left = -1;
  const result = [...values];
  values.forEach((value, index) => {
    if (value === undefined) return;
    for (let gap = left + 1; left >= 0 && gap < index; gap += 1) {
      const start = values[left] as number;
      const share =
        ((hv[gap] as number) - (hv[left] as number)) / ((hv[index] as number) - (hv[left] as number));
      result[gap] = start + share * (value - start);
    }
    left = index;
  });
  return result;
}

function columnOf(table: ConversionTable, scale: ScaleKey): (number | undefined)[] {
  const values = table.columns[scale];
  const hv = table.columns.HV as readonly number[];
  if (values !== undefined) return filled(values, hv);
  const holding = CONVERSION_TABLES.filter(({ columns }) => columns[scale] !== undefined);
  throw new NotAvailable(
    `${scale} is not in the table for ${table.word} (${sourceText(table.source)}, ${table.locator}); ` +
      `it is in: ${holding.map(({ word }) => word).join(", ")}`,
  );
}

function correspond(table: ConversionTable, from: ScaleKey, to: ScaleKey): Correspondence {
  const targets = columnOf(table, to);
  const pairs: [number, number][] = [];
  columnOf(table, from).forEach((value, index) => {
    const target = targets[index];
    if (value !== undefined && target !== undefined) pairs.push([value, target]);
  });
  if (pairs.length < 2) {
    throw new NotAvailable(`${from} and ${to} have no common range in the table for ${table.word}`);
  }
  return {
    from: Float64Array.from(pairs, ([value]) => value),
    to: Float64Array.from(pairs, ([, target]) => target),
  };
}

const known = new Map<ConversionTable, Map<string, Correspondence>>();

/**
 * The corresponding values of two scales in one table.
 *
 * @throws NotAvailable where the table does not print one of them, or not over a common range.
 */
export function correspondence(table: ConversionTable, from: ScaleKey, to: ScaleKey): Correspondence {
  let pairs = known.get(table);
  if (pairs === undefined) {
    pairs = new Map();
    known.set(table, pairs);
  }
  const key = `${from}>${to}`;
  let pair = pairs.get(key);
  if (pair === undefined) {
    pair = correspond(table, from, to);
    pairs.set(key, pair);
  }
  return pair;
}

function outside(value: number, table: ConversionTable, from: ScaleKey, to: ScaleKey, range: string): never {
  throw new NotAvailable(
    `${from} ${numberText(value)} is outside ${range}, where the table for ${table.word} gives ${from} and ${to} ` +
      `(${sourceText(table.source)}, ${table.locator})`,
  );
}

/** Index of the interval of a rising list that holds a value. */
function interval(list: Float64Array, value: number): number {
  let low = 0;
  let high = list.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((list[middle] as number) <= value) low = middle;
    else high = middle;
  }
  return low;
}

/** A value read off a correspondence, `undefined` outside it. */
export function readOff({ from, to }: Correspondence, value: number): number | undefined {
  const last = from.length - 1;
  if (!(value >= (from[0] as number) && value <= (from[last] as number))) return undefined;
  const left = interval(from, value);
  const start = from[left] as number;
  const share = (value - start) / ((from[left + 1] as number) - start);
  const base = to[left] as number;
  return base + share * ((to[left + 1] as number) - base);
}

/**
 * One hardness in another scale, by straight lines between the rows of a published table, so that
 * there and back gives the same figure.
 *
 * @param value - Hardness in `from` [HRC, HV, HB ...], or tensile strength [MPa]
 * @param from - Scale of the figure given.
 * @param to - Scale wanted.
 * @param table - The class of steel.
 * @returns Hardness in `to`, or tensile strength [MPa]; unrounded.
 * @throws NotAvailable outside the rows that carry both scales.
 * Error: that of the table, as EVIDENCE says for each. Source: ISO 18265 and the sheets named in the table.
 */
export function convertHardness(value: number, from: ScaleKey, to: ScaleKey, table: ConversionTable): number {
  const pair = correspondence(table, from, to);
  const result = readOff(pair, value);
  if (result !== undefined) return result;
  const range = `${numberText(pair.from[0] as number)} to ${numberText(pair.from[pair.from.length - 1] as number)}`;
  return outside(value, table, from, to, range);
}
