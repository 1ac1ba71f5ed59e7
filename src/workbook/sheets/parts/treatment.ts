import { NOT_ASSESSED } from "../../../core/run/faulty-cells";
import { TREATMENT } from "../../../functions/run/treatment";
import { inFahrenheit } from "./sheet-parts";

/**
 * Where nothing is published. An empty answer would not do: LibreOffice works cells that hold an empty text out anew
 * when it opens a file, and does not know our functions.
 */
export const NONE = "none held";

/** Where a question failed: an empty cell or "none" would read as all clear. */
export { NOT_ASSESSED };

/** A temperature of another cell in °F; said where there is none. */
export const fahrenheitOf = (celsius: string): string =>
  `IF(ISNUMBER(${celsius}),${inFahrenheit(celsius)},"${NONE}")`;

/** Addresses of cells in the row of a line. */
interface Cells<Key extends string> {
  at(key: Key, index: number): string;
}

/** What the treatment reads of the lines, and of their recipes. */
export type LineCells = Cells<
  "line" | "item" | "steel" | "use" | "aim" | "quench" | "thickness" | "width" | "length" | "temperC"
>;
export type RecipeCells = Cells<
  | "section"
  | "chosenHarden"
  | "hours"
  | "tempers"
  | "knownC"
  | "knownHrc"
  | "quenchTo"
  | "subZeroHours"
  | "clay"
  | "clayFrom"
>;

export type TreatmentLabel =
  | "band status"
  | "chance"
  | "next step"
  | "cautions"
  | "temper C"
  | "temper F"
  | "HRC low"
  | "HRC high"
  | "through-hardens"
  | "normalise"
  | "harden"
  | "soak"
  | "in the furnace"
  | "quench"
  | "clay"
  | "sub-zero"
  | "tempers"
  | "recipe"
  | "do next"
  | "be wary of";

const RESULTS: readonly string[] = TREATMENT.result.map(({ label }) => label);

/** The call that answers for a line: every sheet asks with the same arguments. */
function treatmentCall(lines: LineCells, recipes: RecipeCells, index: number, chosen: string): string {
  const line = (key: Parameters<LineCells["at"]>[0]) => lines.at(key, index);
  const recipe = (key: Parameters<RecipeCells["at"]>[0]) => recipes.at(key, index);
  const given = [
    line("steel"),
    line("use"),
    line("aim"),
    line("quench"),
    line("thickness"),
    line("length"),
    recipe("section"),
    recipe("chosenHarden"),
    chosen,
    recipe("hours"),
    recipe("tempers"),
    recipe("knownC"),
    recipe("knownHrc"),
    recipe("quenchTo"),
    recipe("subZeroHours"),
    recipe("clay"),
    recipe("clayFrom"),
  ];
  return `BLADE.TREATMENT(${given.join(",")})`;
}

/** Which column of its answer holds a result, counted from 1. */
function treatmentColumn(label: TreatmentLabel): number {
  const at = RESULTS.indexOf(label);
  if (at < 0) throw new RangeError(`TREATMENT gives no ${label}`);
  return at + 1;
}

/** One result of the treatment of a line, by its label. */
export function treatmentFigure(
  lines: LineCells,
  recipes: RecipeCells,
  label: TreatmentLabel,
  index: number,
): string {
  const temper = lines.at("temperC", index);
  // A temper that is worked out is none that the smith chose; the cell of the temper itself asks without one.
  const chosen = label === "temper C" ? "" : `IF(ISFORMULA(${temper}),"",${temper})`;
  return `INDEX(${treatmentCall(lines, recipes, index, chosen)},1,${treatmentColumn(label)})`;
}
