import { type LiveFormula, type LiveWorkbook, readLiveWorkbook } from "../read/live-workbook";
import { type Calculation, calculateFile } from "./calculation";
import { writePrintAreas } from "./print-areas";
import { nameOf } from "./sheet-editor";
import { type Made, WorkbookFile } from "./workbook-file";
import { writeResults } from "./write-results";

/** A cell and what there is to say about it. */
export interface CellRemark {
  readonly sheet: string;
  readonly cell: string;
  readonly text: string;
}

/** What a recalculation did. */
export interface Recalculation {
  /** The whole file; the very bytes that were given where nothing had to change. */
  readonly bytes: Uint8Array;
  readonly isChanged: boolean;
  readonly formulas: number;
  /** Cells whose value is another one than before, filled and emptied ones counted. */
  readonly changed: number;
  /** Formulas whose function names were broken and now stand as Excel finds them. */
  readonly repaired: number;
  /** Formulas that keep their stored value, with the reason. */
  readonly left: readonly CellRemark[];
  /** Formulas that give several values of which the file shows only the first. */
  readonly cutShort: readonly CellRemark[];
  /** Formulas that come to an error, with its sentence. */
  readonly errors: readonly CellRemark[];
}

const CUT_SHORT =
  "gives several values, but the file marks it for one cell: enter it again in Excel to see them all";

const remark = ({ sheet, cell }: LiveFormula, text: string): CellRemark => ({
  sheet,
  cell: nameOf(cell),
  text,
});

/** Formulas of a workbook that come to an error, with its sentence. */
export function errorsOf(live: LiveWorkbook, done: Calculation): CellRemark[] {
  return live.sheets.flatMap(({ formulas }) =>
    [...formulas.values()].flatMap((formula): CellRemark[] => {
      if (done.left.has(formula)) return [];
      const result = done.resultAt(formula, formula.cell.row, formula.cell.column);
      if (!("error" in result)) return [];
      const text = result.message === undefined ? result.error : `${result.error}: ${result.message}`;
      return [remark(formula, text)];
    }),
  );
}

/** Formulas that keep the value the file held, with the reason. */
export function leftAsTheyWere(done: Calculation): CellRemark[] {
  return [...done.left].map(([formula, reason]) => remark(formula, reason));
}

const formulasOf = ({ sheets }: LiveWorkbook) => sheets.reduce((sum, { formulas }) => sum + formulas.size, 0);

/** What there is to say of a calculation and of the file that holds its results. */
function told(
  { live, done }: Made,
  written: Pick<Recalculation, "bytes" | "isChanged" | "changed" | "repaired">,
): Recalculation {
  return {
    ...written,
    formulas: formulasOf(live),
    left: leftAsTheyWere(done),
    cutShort: [...done.first].map((formula) => remark(formula, CUT_SHORT)),
    errors: errorsOf(live, done),
  };
}

/**
 * Recalculates a workbook file. Only values and broken names of our functions are written, each in its place:
 * every other byte of every part stays as it is. The file never asks to be calculated on opening because of it.
 *
 * @param bytes - The .xlsx file.
 * @param onProgress - Told in a few words what is being done.
 * @throws FileRefusal for a file that cannot be read or must not be touched.
 */
export async function recalculate(
  bytes: Uint8Array,
  onProgress: (words: string) => void = () => undefined,
): Promise<Recalculation> {
  onProgress("reading");
  const live = readLiveWorkbook(bytes);
  onProgress(`calculating ${formulasOf(live)} formulas`);
  const done = await calculateFile(live);
  onProgress("writing");
  const { changed, repaired } = writeResults(live, done);
  if (changed > 0) writePrintAreas(live, done);
  const saved = live.file.save();
  WorkbookFile.holdsResultsOf(live, done, saved);
  return told({ live, done }, { bytes: saved, isChanged: live.file.isChanged, changed, repaired });
}

/** The same of a file whose results were written just now; `undefined` of any other, which has to be calculated. */
export function justRecalculated(bytes: Uint8Array): Recalculation | undefined {
  const known = WorkbookFile.resultsIn(bytes);
  return known && told(known, { bytes, isChanged: false, changed: 0, repaired: 0 });
}
