import { STAINLESS_FIT } from "../../src/core/hardening/stainless-fit";
import { CURVE_BANDS } from "../../src/core/tempering/fits";
import { missesLeftOut } from "../fitting/fit-stainless";
import { BLADE_ROWS, type Scored, score } from "../tempering/score";
import { answered, readTable, seenOf, sourcesOf, tablePaths } from "./checks";
import { isInside } from "./stated-bands";

/** One published table, or the tempering rows of one ground, with how far every row was missed. */
export interface Measured {
  /** What it is frozen under: the path of a table, or the ground of tempering rows. */
  readonly key: string;
  readonly title: string;
  readonly quantity: string;
  readonly unit: string;
  readonly sources: readonly string[];
  readonly seen: string;
  readonly fitted: boolean;
  /** Answer less published, row by row. */
  readonly errors: readonly number[];
  /** Whether each row lies in the band that the library states; `undefined` where it states none. */
  readonly held: readonly (boolean | undefined)[];
}

function measuredTable(path: string): Measured {
  const table = readTable(path);
  const rows = answered(table);
  const [, unit = ""] = table.columns[table.columns.length - 1] ?? [];
  return {
    key: path.replace(/^tests\//, ""),
    title: table.title,
    quantity: table.quantity,
    unit,
    sources: sourcesOf(table),
    seen: seenOf(table),
    fitted: table.fitted,
    errors: rows.map(({ answer, expected }) => answer - expected),
    held: rows.map((row) => isInside(table.quantity, row)),
  };
}

const FORMULA_HALF_WIDTH = 3;

/** Whether a row lies in the band that its ground states: 3 HRC by formula, that of unfitted rows by a curve. */
function inBand({ ground, error }: Scored): boolean {
  const halfWidth = ground === "formula, steel left out" ? FORMULA_HALF_WIDTH : CURVE_BANDS.blade.halfWidth;
  return Math.abs(error) <= halfWidth;
}

function ofGround(ground: string, list: readonly Scored[]): Measured {
  return {
    key: `tempering rows: ${ground}`,
    title: `Every row of hardness after temper read, 150 to 427 °C: ${ground}`,
    quantity: "hardness after temper, own source left out",
    unit: "HRC",
    sources: [...new Set(list.map(({ row }) => row.source))],
    seen: "READ",
    fitted: ground === "in sample only",
    errors: list.map(({ error }) => error),
    held: list.map(inBand),
  };
}

const TEMPERING = BLADE_ROWS.map(score).filter(({ counts }) => counts);

/** Tempering rows of sources that were read, each predicted by everything but its own source. */
function measuredTempering(): Measured[] {
  const groups = new Map<string, Scored[]>();
  for (const one of TEMPERING) groups.set(one.ground, [...(groups.get(one.ground) ?? []), one]);
  groups.delete("refused");
  return [...groups].sort(([a], [b]) => (a < b ? -1 : 1)).map(([ground, list]) => ofGround(ground, list));
}

/** Rows of stainless steel after temper, each predicted by a fit that knows nothing of its series. */
function measuredStainless(): Measured {
  const rows = missesLeftOut();
  const errors = rows.map(({ miss }) => miss);
  return {
    key: "tempering rows: stainless, series left out",
    title: "Every row of stainless steel after temper read, each series left out of its own fit",
    quantity: "hardness of stainless steel after temper, own series left out",
    unit: "HRC",
    sources: [...new Set(rows.map(({ row }) => row.source))],
    seen: "READ",
    fitted: false,
    errors,
    held: errors.map((error) => Math.abs(error) <= STAINLESS_FIT.halfWidth),
  };
}

/** Tempering rows of sources that were read and that the library declines to answer. */
export const REFUSED_ROWS = TEMPERING.filter(({ ground }) => ground === "refused").length;

/** Everything that is measured: tables in the order of their paths, then tempering rows by ground. */
export const MEASURED: readonly Measured[] = [
  ...tablePaths().map(measuredTable),
  ...measuredTempering(),
  measuredStainless(),
];
