import { listGrades } from "../../src/core";
import { steelOf } from "../../src/core/steel/find";
import fits from "../../src/core/tempering/fits.json";
import { temperingRelations } from "../../src/core/tempering/relations";
import { STRENGTH_ROWS } from "../fitting/fit-strength";
import { ALL_SOURCES, type PublishedTable, readTable, sourcesOf, tablePaths } from "./checks";

/** Fitted and cited, their rows not held: the notes of the files in `tests/fitting` name them. */
const NOT_HELD = ["asm-handbook-1", "asm-handbook-4"];

const TABLES = tablePaths().map(readTable);

/** Sources of the curves and formulas after temper, whatever grade they stand for. */
function temperingFits(): string[] {
  const relations = listGrades().flatMap((grade) => temperingRelations(steelOf(grade)));
  return [
    ...relations.filter(({ evidence }) => evidence === "fitted").map(({ source }) => source),
    ...fits.curves.flatMap(({ sources }) => sources),
    ...fits.points.map(({ source }) => source),
  ];
}

/** Every source of which a row took part in a fit, or stands as a curve or a point that answers. */
export const FIT_SOURCES: ReadonlySet<string> = new Set([
  ...TABLES.filter(({ fitted }) => fitted).flatMap(sourcesOf),
  ...temperingFits(),
  ...STRENGTH_ROWS.map(({ source }) => source),
  ...NOT_HELD,
]);

const seenIn = (table: PublishedTable, key: string) => table.seen ?? ALL_SOURCES[key]?.seen ?? "";

/** Sources of the published tables that no fit used, each with how it was seen: READ, MEMORY, DERIVED. */
export const UNFITTED_SOURCES: ReadonlyMap<string, string> = new Map(
  TABLES.flatMap((table) => sourcesOf(table).map((key) => [key, seenIn(table, key)] as const)).filter(
    ([key]) => !FIT_SOURCES.has(key),
  ),
);
