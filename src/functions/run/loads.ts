import type { LoadLine } from "../../core/run/load-packing";
import { LOAD_GROUPING, loadsAlike } from "../../core/run/loads";
import { type Answer, tableFunction } from "../declare";
import { besideRow, type Column, filled } from "../lists";
import { kilograms } from "../money/arguments";
import { number, numberOrNothing, rangeParameter, text } from "../parameters";

function linesOf(recipes: Column<string>, counts: Column<number>, masses: Column<number>): LoadLine[] {
  const rows = Math.max(recipes.length, counts.length, masses.length);
  const lines: LoadLine[] = [];
  for (let row = 0; row < rows; row += 1) {
    const recipe = besideRow(recipes, row, rows, "recipe");
    const pieces = besideRow(counts, row, rows, "count");
    if ((recipe === undefined && pieces === undefined) || pieces === 0) continue;
    lines.push({
      recipe: filled(recipe, row, "recipe"),
      pieces: filled(pieces, row, "count"),
      mass: filled(besideRow(masses, row, rows, "kg a piece"), row, "kg a piece"),
    });
  }
  return lines;
}

/** Loads written down between two pauses. */
const ROWS_A_PART = 4096;

/** A sum of masses without the traces of binary fractions. */
function tidy(value: number): number {
  return Number(value.toPrecision(12));
}

export const LOADS = tableFunction({
  name: "LOADS",
  takesLong: true,
  summary: "Furnace loads of a run, a row a load: same recipe together, every piece in one load.",
  parameters: {
    recipe: rangeParameter(
      text({
        label: "recipe",
        kind: "recipe",
        help: "Recipe of each line in your own words: steel family, hardening window and temper, a column of up to 100,000 lines.",
        accepts: 'the recipe in words, for example "52100 845 °C"',
        find: (given) => String(given),
      }),
    ),
    count: rangeParameter(
      number({
        label: "count",
        quantity: "count",
        unit: "",
        whole: true,
        min: 0,
        max: 100_000,
        help: "Pieces of each line, a column.",
      }),
    ),
    mass: rangeParameter(
      number(kilograms({ label: "kg a piece", help: "Mass of one piece of each line in kg." })),
    ),
    piecesALoad: numberOrNothing({
      label: "pieces a load",
      quantity: "count",
      unit: "",
      whole: true,
      min: 1,
      max: 100_000,
      help: "Pieces that the furnace holds at a time.",
    }),
    massALoad: numberOrNothing(
      kilograms({ label: "kg a load", help: "Mass that the furnace or the oil takes at a time, in kg." }),
    ),
  },
  result: [
    { label: "load", unit: "" },
    { label: "recipe", unit: "text" },
    { label: "pieces", unit: "" },
    { label: "mass", unit: "kg" },
  ],
  relations: [LOAD_GROUPING],
  *compute({ recipe, count, mass, piecesALoad = Infinity, massALoad = Infinity }) {
    const rows: Answer[][] = [];
    for (const load of loadsAlike(linesOf(recipe, count, mass), { pieces: piecesALoad, mass: massALoad })) {
      const kilograms = tidy(load.mass);
      for (let each = 0; each < load.count; each += 1) {
        rows.push([rows.length + 1, load.recipe, load.pieces, kilograms]);
        if (rows.length % ROWS_A_PART === 0) yield;
      }
    }
    return rows;
  },
});
