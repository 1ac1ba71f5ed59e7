import { rectangleName } from "../../formula/addresses";
import { mentionsOf } from "../../formula/references";
import { isOurs } from "../file/beyond-engine";
import { FileRefusal } from "../file/package/file-refusal";
import { relationshipsOf } from "../file/package/relationships";
import { type Calculation, calculateFile } from "../file/patch/calculation";
import { type CellRemark, errorsOf, leftAsTheyWere, writeResults } from "../file/patch/recalculate";
import { type LiveFormula, type LiveWorkbook, readLiveWorkbook } from "../file/read/live-workbook";
import { withFixedValues } from "./fixed-values";
import { inputsOf } from "./inputs";
import { chosenSheets, withOnlySheets } from "./left-out";
import type { Note } from "./note";
import { addNotes } from "./notes";
import { addProvenance, PROVENANCE } from "./provenance";
import { withoutRulesOn } from "./sheet-elements";
import { withSheets, withTabChosen } from "./sheet-list";
import { openingPlace, orderOf } from "./sheet-order";
import { isLive, refuseTraces, stripLiveParts } from "./strip";
import { digestOf, valuesOf } from "./values";

export interface ShareOptions {
  /** As the sender gives it; nothing here knows what day it is. */
  readonly date?: string;
  /** Name of the workbook the copy is made from. */
  readonly source?: string;
  /** Names of the sheets to share; all of them unless given. */
  readonly sheets?: readonly string[];
  readonly onProgress?: (words: string) => void;
}

/** A copy that holds values only. */
export interface ShareCopy {
  readonly bytes: Uint8Array;
  readonly formulas: number;
  readonly digest: string;
  readonly left: readonly CellRemark[];
  readonly errors: readonly CellRemark[];
  /** Hidden sheets that are in the copy: whoever gets it can show them. */
  readonly hidden: readonly string[];
  /** How many sheets of the workbook are not in the copy. */
  readonly leftOut: number;
}

function noteFor(formula: LiveFormula, done: Calculation): Note {
  const { cell } = formula;
  const area = done.areaOf(formula);
  const filled =
    formula.kind === "plain" ||
    rectangleName(area) === rectangleName({ ...area, lastRow: area.row, lastColumn: area.column })
      ? ""
      : `\nfilled ${rectangleName(area)}`;
  const result = done.left.has(formula) ? undefined : done.resultAt(formula, cell.row, cell.column);
  const sentence =
    result && "error" in result && result.message !== undefined ? `\n${result.error}: ${result.message}` : "";
  return { cell, text: `=${formula.typed}${filled}${sentence}` };
}

/** The names of parts and links differ in the strict form; one file must not mix the two. */
const STRICT = "http://purl.oclc.org/ooxml/";

function refuseUnfit(live: LiveWorkbook): void {
  if (live.file.text(live.main.name).includes(STRICT)) {
    throw new FileRefusal("The workbook is saved as Strict Open XML: save it as an ordinary .xlsx first.");
  }
  if (live.main.listed.some((name) => name.toLowerCase() === PROVENANCE.toLowerCase())) {
    throw new FileRefusal(
      `The workbook has a sheet called ${PROVENANCE} already: it is a copy itself, or that sheet needs another name.`,
    );
  }
}

/** Replaces formulas by values and lays the formulas into notes, sheet by sheet. */
function fixSheets(
  current: LiveWorkbook,
  formulasOf: ReadonlyMap<string, readonly Note[]>,
  isUnwanted: (formula: string) => boolean,
): void {
  const { file } = current;
  for (const sheet of current.sheets) {
    const { part, name } = sheet.listed;
    file.setText(part, withoutRulesOn(part, withFixedValues(current, sheet), isUnwanted));
    addNotes(file, part, formulasOf.get(name) ?? []);
  }
}

/** Parts that are shown as a sheet with a tab of its own. */
const isTab = (kind: string) => kind === "worksheet" || kind === "chartsheet" || kind === "dialogsheet";

function listSheets(current: LiveWorkbook, link: string): void {
  const { file, main } = current;
  const sheets = orderOf(current, link);
  const opens = openingPlace(current, sheets);
  file.setText(
    main.name,
    withSheets(main.name, file.text(main.name), main.names, { sheets, opens, isUnwanted: isLive }),
  );
  const chosen = main.sheets.find(({ position }) => position === sheets[opens]?.from)?.part;
  for (const { kind, part } of relationshipsOf(file, main.name)) {
    if (part !== undefined && isTab(kind) && file.has(part))
      file.setText(part, withTabChosen(part, file.text(part), part === chosen));
  }
}

const linesOf = (remarks: readonly CellRemark[]) =>
  remarks.map(({ sheet, cell, text }) => [sheet, cell, text] as const);

/** Beyond so many, notes make a copy slow to open: the formulas of the spreadsheet program itself then go without. */
const MAX_NOTES = 5000;

function notesBySheet(live: LiveWorkbook, done: Calculation): Map<string, readonly Note[]> {
  const isNoted = areAllNoted(live) ? () => true : isOurs;
  return new Map(
    live.sheets.map(({ listed, formulas }) => [
      listed.name,
      [...formulas.values()].filter(isNoted).map((formula) => noteFor(formula, done)),
    ]),
  );
}

const areAllNoted = ({ sheets }: LiveWorkbook) =>
  sheets.reduce((sum, { formulas }) => sum + formulas.size, 0) <= MAX_NOTES;

/** What there is to say about the formulas of a calculated workbook, on the sheets that are shared. */
function accountOf(live: LiveWorkbook, done: Calculation, kept: readonly string[]) {
  const isKept = ({ sheet }: CellRemark) => kept.includes(sheet);
  const shared = live.sheets.filter(({ listed }) => kept.includes(listed.name));
  return {
    areAllNoted: areAllNoted(live),
    formulas: shared.reduce((sum, { formulas }) => sum + formulas.size, 0),
    left: leftAsTheyWere(done).filter(isKept),
    errors: errorsOf(live, done).filter(isKept),
    inputs: inputsOf(live).filter(([sheet]) => kept.includes(sheet)),
    hidden: shared.flatMap(({ listed }) => (listed.isHidden ? [listed.name] : [])),
    leftOut: live.main.listed.length - kept.length,
  };
}

/**
 * Makes a copy of a workbook for someone without the add-in: calculated, every formula replaced by its value and
 * kept as a note, what a supplier acts on first, and a sheet that says where the values come from. Nothing of an
 * add-in, of other files or of the order of calculation is left in it.
 *
 * @throws FileRefusal for a file that cannot be read, a sheet that is not there, or a copy that would still hold a
 *   trace of an add-in.
 */
export async function shareCopy(bytes: Uint8Array, options: ShareOptions = {}): Promise<ShareCopy> {
  const progress = options.onProgress ?? (() => undefined);
  const live = readLiveWorkbook(bytes);
  refuseUnfit(live);
  const kept = options.sheets === undefined ? live.main.listed : chosenSheets(live, options.sheets);
  progress("calculating");
  const done = await calculateFile(live);
  writeResults(live, done);
  const account = accountOf(live, done, kept);
  progress("copying values");
  const calculated = live.file.save();
  const current = readLiveWorkbook(account.leftOut === 0 ? calculated : withOnlySheets(calculated, kept));
  const digest = await digestOf(valuesOf(current), PROVENANCE);
  const mentions = mentionsOf(live.main.listed.filter((name) => !kept.includes(name)));
  fixSheets(current, notesBySheet(live, done), (formula) => isLive(formula) || mentions(formula));
  stripLiveParts(current.file, current);
  const link = addProvenance(current.file, current.main.name, {
    ...account,
    date: options.date ?? "",
    source: options.source ?? "",
    digest,
    left: linesOf(account.left),
    errors: linesOf(account.errors),
  });
  listSheets(current, link);
  refuseTraces(current.file);
  return { ...account, bytes: current.file.save(), digest };
}
