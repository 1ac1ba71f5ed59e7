import e140 from "../../data/hardness/astm-e140.json";
import coldWork from "../../data/hardness/iso-18265-cold-work.json";
import hardened from "../../data/hardness/iso-18265-hardened.json";
import highSpeed from "../../data/hardness/iso-18265-high-speed.json";
import lowAlloy from "../../data/hardness/iso-18265-low-alloy.json";
import quenchedAndTempered from "../../data/hardness/iso-18265-quenched-and-tempered.json";
import type { SourceKey } from "../sources";
import { frozen } from "../table";
import { type Worded, wordFinder } from "../word-list";
import { SCALES, type ScaleKey } from "./scales";

/** One published conversion table: corresponding values by rising Vickers hardness. */
export interface ConversionTable extends Worded {
  readonly title: string;
  readonly source: SourceKey;
  /** Table and clause in the source. */
  readonly locator: string;
  /** By scale [in its unit]; `undefined` where nothing may be computed from: not printed, or in brackets. */
  readonly columns: Readonly<Partial<Record<ScaleKey, readonly (number | undefined)[]>>>;
}

interface Printed {
  readonly title: string;
  readonly source: string;
  readonly locator: string;
  readonly columns: readonly (readonly string[])[];
  readonly rows: readonly (readonly (number | string | null)[])[];
}

/** Brackets mark a value outside the range of its test method: it is text in the data and stays out. */
function usable(cell: number | string | null | undefined): number | undefined {
  return typeof cell === "number" ? cell : undefined;
}

function table(word: string, aliases: readonly string[], printed: Printed): ConversionTable {
  const columns: Partial<Record<ScaleKey, readonly (number | undefined)[]>> = {};
  for (const { word: key } of SCALES) {
    const position = printed.columns.findIndex(([label]) => label === key);
    if (position >= 0) columns[key] = printed.rows.map((row) => usable(row[position]));
  }
  const { title, source, locator } = printed;
  return { word, aliases, title, source: source as SourceKey, locator, columns };
}

/** Every conversion table; the word names the class of steel. */
export const CONVERSION_TABLES: readonly ConversionTable[] = frozen([
  table("low alloy", ["carbon steel", "unalloyed", "plain carbon", "A.1"], lowAlloy),
  table("quenched and tempered", ["hardened and tempered", "Q+T", "QT"], quenchedAndTempered),
  table("hardened", ["as quenched"], hardened),
  table("cold work", ["cold work tool steel", "tool steel"], coldWork),
  table("high speed", ["high speed steel", "HSS"], highSpeed),
  table("ASTM E140", ["E140"], e140),
]);

/**
 * Finds a table by its class of steel.
 *
 * @throws NotAvailable naming the nearest classes.
 */
export const findConversionTable = wordFinder(CONVERSION_TABLES, {
  noun: "class of steel for hardness conversion",
  listedBy: "SCALES()",
});
