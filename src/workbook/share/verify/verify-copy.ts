import { isErrorCode } from "../../../formula/tokens";
import { USUAL_TIME } from "../../answers/forms";
import type { CellRemark } from "../../file/patch/recalculate";
import { nameOf } from "../../file/patch/sheet-editor";
import { WorkbookFile } from "../../file/patch/workbook-file";
import { type LiveWorkbook, readLiveWorkbook } from "../../file/read/live-workbook";
import { isOfOurs } from "../../file/read/read-workbook";
import { LOG_SHEET } from "../../sheets/sheets-of-the-plan";
import { LABELS, PROVENANCE } from "../provenance";
import { readRecipient } from "../recipient";
import { shareCopy } from "../share-copy";
import { isSignedBy } from "../signature";
import { plainContent, type Values, valuesOf } from "../values";
import { type CellPair, differingCells, TOLERANCE } from "./agreement";
import { alignedAnswers, answersIn, tablesIn } from "./aligned";
import { type Difference, differencesWithCauses } from "./causes";
import { calculatedSide } from "./live-side";
import { ownersIn } from "./owners";
import { shownDifferently } from "./shown";
import { isSeal, type Statements, statementsOf } from "./statements";

export interface VerifyOptions {
  /** How far numbers may lie apart, as a part of the larger one and at the least of 1; 1e-9 unless given. */
  readonly tolerance?: number;
  /** The public key that the copy must be signed with; any or none unless given. */
  readonly key?: string;
  readonly onProgress?: (words: string) => void;
}

/** Whether a copy is signed: not at all, with the key it states and the key that was asked for, or wrongly. */
export type SignatureFound = "none" | "good" | "another key" | "wrong";

/** A shared copy set against the live workbook, calculated anew. */
export interface Verification extends Statements {
  /** True where everything agrees and the copy has the SHA-256 it was made with. */
  readonly isSound: boolean;
  /** Filled cells that were compared. */
  readonly cells: number;
  readonly differences: readonly Difference[];
  /** Whether the copy shows what the sender did not make, answers aside. */
  readonly isAltered: boolean;
  /** Cells that the other side filled in. */
  readonly answers: number;
  /** Whether another program saved the copy after it was made. */
  readonly isSavedElsewhere: boolean;
  /** Whether the copy is as it was made and the plan says another thing since. */
  readonly isPlanChanged: boolean;
  /** What the copy shows otherwise beside its values: formats, colours, hidden rows, merged cells, notes. */
  readonly shown: readonly CellRemark[];
  /** What Provenance says otherwise than a copy made now. */
  readonly provenance: readonly CellRemark[];
  /** Formulas that stand in the copy, which should hold values only. */
  readonly formulas: readonly CellRemark[];
  /** Sheets that only one of the two has; the sender may have left some out, and the copy then says how many. */
  readonly sheetsOfLive: readonly string[];
  readonly sheetsOfCopy: readonly string[];
  readonly signatureFound: SignatureFound;
}

/** An error typed as a value is no formula; LibreOffice saves it as one that is nothing but its name. */
function formulasIn(copy: LiveWorkbook): CellRemark[] {
  const all = copy.sheets.flatMap(({ formulas }) => [...formulas.values()]);
  return all
    .filter(({ typed }) => !isErrorCode(typed))
    .map(({ sheet, cell, typed }) => ({ sheet, cell: nameOf(cell), text: `=${typed}` }));
}

/** The log of answers may come into a plan after its copies went out. */
const namesIn = ({ main }: LiveWorkbook) =>
  main.listed.filter((name) => name !== PROVENANCE && name !== LOG_SHEET);

/** A statement as it was given; empty where the sheet says that nothing was. */
const given = (statement: string | undefined, none: string) =>
  statement === undefined || statement === none ? "" : statement;

/** The copy as it comes out when it is made anew of the same sheets; `undefined` where none of them is left. */
async function madeAnew(
  live: Uint8Array,
  common: readonly string[],
  { date, source, audience, enquiry, by }: Statements,
): Promise<LiveWorkbook | undefined> {
  if (common.length === 0) return undefined;
  const recipient = readRecipient(given(audience, "sheets chosen by name"), enquiry);
  const { bytes } = await shareCopy(live, {
    choice: { kind: "sheets", names: common },
    date: given(date, "not given"),
    source: given(source, "not given"),
    by: given(by, USUAL_TIME),
    ...(recipient && { recipient }),
  });
  return readLiveWorkbook(bytes);
}

const inWords = ({ sheet, cell, live, shared }: CellPair): CellRemark => {
  const [ours, theirs] = [live, shared].map((content) => plainContent(content) || "nothing");
  return { sheet, cell, text: `as made: ${ours}; in the copy: ${theirs}` };
};

/** Cells of Provenance that say another thing; the version that calculated may be another without a change. */
function provenanceDifferences(made: Values, found: Values, { isThisVersion }: Statements): CellRemark[] {
  const only = (values: Values) => new Map([...values].filter(([sheet]) => sheet === PROVENANCE));
  const [seals, sealsFound] = [isSeal(made), isSeal(found)];
  const cells = made.get(PROVENANCE);
  const isVersion = (cell: string) => {
    const label = cells?.get(`A${cell.slice(1)}`);
    return !isThisVersion && label !== undefined && plainContent(label) === LABELS.computedBy;
  };
  const isKey = (cell: string) => {
    const label = found.get(PROVENANCE)?.get(`A${cell.slice(1)}`);
    return label !== undefined && plainContent(label) === LABELS.key;
  };
  return differingCells(only(made), only(found), 0)
    .filter(
      ({ sheet, cell }) =>
        !seals(sheet, cell) && !sealsFound(sheet, cell) && !isVersion(cell) && !isKey(cell),
    )
    .map(inWords);
}

async function signatureIn(
  { key, signature, stated = "" }: Statements,
  wanted: string | undefined,
): Promise<SignatureFound> {
  const isSigned = signature !== undefined && key !== undefined;
  const saysSigned = key !== undefined && !key.startsWith("none");
  if (!isSigned) return wanted === undefined && !saysSigned ? "none" : "wrong";
  if (!(await isSignedBy(key, stated, signature))) return "wrong";
  return wanted === undefined || wanted.trim() === key ? "good" : "another key";
}

/**
 * Calculates the live workbook, makes the copy anew, and compares what the shared copy shows with it: every value,
 * format, note and statement.
 *
 * @param live - The .xlsx file with formulas.
 * @param shared - The copy that holds values.
 * @throws FileRefusal where one of the two cannot be read.
 */
export async function verifyCopy(
  live: Uint8Array,
  shared: Uint8Array,
  { tolerance = TOLERANCE, key, onProgress = () => undefined }: VerifyOptions = {},
): Promise<Verification> {
  onProgress("reading");
  const copy = readLiveWorkbook(shared);
  const values = valuesOf(copy);
  const statements = await statementsOf(values);
  const [ours, theirs] = [namesIn(WorkbookFile.of(live).live), namesIn(copy)];
  const common = theirs.filter((name) => ours.includes(name));
  onProgress("calculating");
  const made = await madeAnew(live, common, statements);
  const expected = made === undefined ? new Map<string, never>() : valuesOf(made);
  const tables = tablesIn(values);
  const aligned = alignedAnswers(expected, values);
  const pairs = differingCells(withoutProvenance(expected), aligned, tolerance);
  const differences = await explained(live, pairs, { copy, statements, tolerance, onProgress });
  const differing = new Set(pairs.map(({ sheet, cell }) => `${sheet}!${cell}`));
  const seals = isSeal(values);
  const isOwnCell = ({ sheet, cell: place }: CellRemark) => {
    const [cell = ""] = place.split(" ");
    return differing.has(`${sheet}!${cell}`) || seals(sheet, cell);
  };
  // Rows of a table of answers may be sorted and its columns moved: what they show has no fixed place.
  const ofAnswers = new Set([...tablesIn(expected), ...tables].map(({ sheet }) => sheet));
  const shown =
    made === undefined
      ? []
      : shownDifferently(made, copy).filter((remark) => !isOwnCell(remark) && !ofAnswers.has(remark.sheet));
  // With a digest as stated, lines of Provenance that differ follow from a plan that was changed since.
  const mayFollow = statements.digest === "as stated" && pairs.length > 0;
  const provenance = mayFollow ? [] : provenanceDifferences(expected, values, statements);
  const [sheetsOfLive, sheetsOfCopy] = [
    ours.filter((name) => !theirs.includes(name)),
    theirs.filter((name) => !ours.includes(name) && !ofAnswers.has(name)),
  ];
  const formulas = formulasIn(copy);
  const signatureFound = await signatureIn(statements, key);
  const found = [differences, formulas, sheetsOfCopy, shown, provenance];
  const cells = ours.reduce((sum, name) => sum + (values.get(name)?.size ?? 0), 0);
  const isWhole = sheetsOfLive.length === statements.leftOut;
  const isPlanChanged = statements.digest === "as stated" && (pairs.length > 0 || !isWhole);
  const isSigned = signatureFound === "good" || signatureFound === "none";
  const isSound =
    statements.digest === "as stated" && isWhole && isSigned && found.every(({ length }) => length === 0);
  return {
    ...statements,
    isSound,
    cells,
    differences,
    shown,
    provenance,
    answers: answersIn(tables),
    isSavedElsewhere: !isOfOurs(copy),
    isPlanChanged,
    isAltered:
      statements.digest !== "as stated" ||
      formulas.length + sheetsOfCopy.length > 0 ||
      (shown.length > 0 && !isPlanChanged),
    formulas,
    sheetsOfLive,
    sheetsOfCopy,
    signatureFound,
  };
}

const withoutProvenance = (values: Values): Values =>
  new Map([...values].filter(([sheet]) => sheet !== PROVENANCE));

interface Around {
  readonly copy: LiveWorkbook;
  readonly statements: Statements;
  readonly tolerance: number;
  readonly onProgress: (words: string) => void;
}

async function explained(
  live: Uint8Array,
  pairs: readonly CellPair[],
  { copy, statements, tolerance, onProgress }: Around,
): Promise<Difference[]> {
  if (pairs.length === 0) return [];
  onProgress(`finding out why ${pairs.length} cells differ`);
  const side = await calculatedSide(live);
  return differencesWithCauses(pairs, {
    live: side,
    ownerOf: ownersIn(side.workbook, copy),
    isOtherVersion: statements.computedBy !== undefined && !statements.isThisVersion,
    tolerance,
  });
}
