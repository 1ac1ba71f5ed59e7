import { isErrorCode } from "../../../formula/tokens";
import type { CellRemark } from "../../file/patch/recalculate";
import { nameOf } from "../../file/patch/sheet-editor";
import { type LiveWorkbook, readLiveWorkbook } from "../../file/read/live-workbook";
import { PROVENANCE } from "../provenance";
import { valuesOf } from "../values";
import { differingCells, TOLERANCE } from "./agreement";
import { type Difference, differencesWithCauses } from "./causes";
import { calculatedSide } from "./live-side";
import { ownersIn } from "./owners";
import { type Statements, statementsOf } from "./statements";

export interface VerifyOptions {
  /** How far numbers may lie apart, as a part of the larger one and at the least of 1; 1e-9 unless given. */
  readonly tolerance?: number;
  readonly onProgress?: (words: string) => void;
}

/** A shared copy set against the live workbook, calculated anew. */
export interface Verification extends Statements {
  /** True where everything agrees and the copy has the SHA-256 it was made with. */
  readonly isSound: boolean;
  /** Filled cells that were compared. */
  readonly cells: number;
  readonly differences: readonly Difference[];
  /** Formulas that stand in the copy, which should hold values only. */
  readonly formulas: readonly CellRemark[];
  /** Sheets that only one of the two has; the sender may have left some out, and the copy then says how many. */
  readonly sheetsOfLive: readonly string[];
  readonly sheetsOfCopy: readonly string[];
}

/** An error typed as a value; LibreOffice saves it as a formula that is nothing but its name. */

function formulasIn(copy: LiveWorkbook): CellRemark[] {
  const all = copy.sheets.flatMap(({ formulas }) => [...formulas.values()]);
  return all
    .filter(({ typed }) => !isErrorCode(typed))
    .map(({ sheet, cell, typed }) => ({ sheet, cell: nameOf(cell), text: `=${typed}` }));
}

const namesIn = ({ main }: LiveWorkbook) => main.listed.filter((name) => name !== PROVENANCE);

/**
 * Calculates the live workbook and compares every value of a shared copy with it.
 *
 * @param live - The .xlsx file with formulas.
 * @param shared - The copy that holds values.
 * @throws FileRefusal where one of the two cannot be read.
 */
export async function verifyCopy(
  live: Uint8Array,
  shared: Uint8Array,
  { tolerance = TOLERANCE, onProgress = () => undefined }: VerifyOptions = {},
): Promise<Verification> {
  onProgress("reading");
  const copy = readLiveWorkbook(shared);
  const values = valuesOf(copy);
  const statements = await statementsOf(values);
  onProgress("calculating");
  const side = await calculatedSide(live);
  const pairs = differingCells(side.values, values, tolerance);
  if (pairs.length > 0) onProgress(`finding out why ${pairs.length} cells differ`);
  const differences = await differencesWithCauses(pairs, {
    live: side,
    ownerOf: ownersIn(side.workbook, copy),
    isOtherVersion: statements.computedBy !== undefined && !statements.isThisVersion,
    tolerance,
  });
  const [ours, theirs] = [namesIn(side.workbook), namesIn(copy)];
  const [sheetsOfLive, sheetsOfCopy] = [
    ours.filter((name) => !theirs.includes(name)),
    theirs.filter((name) => !ours.includes(name)),
  ];
  const formulas = formulasIn(copy);
  const found = [differences, formulas, sheetsOfCopy];
  const cells = ours.reduce((sum, name) => sum + (values.get(name)?.size ?? 0), 0);
  const isWhole = sheetsOfLive.length === statements.leftOut;
  const isSound = statements.digest === "as stated" && isWhole && found.every(({ length }) => length === 0);
  return { ...statements, isSound, cells, differences, formulas, sheetsOfLive, sheetsOfCopy };
}
