import { rectangleName } from "../xlsx/addresses";
import { type Calculation, calculateFile } from "../xlsx/calculation";
import { FileRefusal } from "../xlsx/file-refusal";
import { type LiveFormula, type LiveWorkbook, readLiveWorkbook } from "../xlsx/live-workbook";
import { type CellRemark, errorsOf, leftAsTheyWere, writeResults } from "../xlsx/recalculate";
import { withFixedValues } from "./fixed-values";
import { inputsOf } from "./inputs";
import type { Note } from "./note";
import { addNotes } from "./notes";
import { addProvenance, PROVENANCE } from "./provenance";
import { withoutRulesOn } from "./sheet-elements";
import { type CopiedSheet, withSheets, withTabChosen } from "./sheet-list";
import { isLive, refuseTraces, stripLiveParts } from "./strip";
import { digestOf, valuesOf } from "./values";

/** The sheets a supplier acts on; they stand first in a copy. */
export const SUPPLIER_SHEETS = ["Heat-treat order", "Steel order"] as const;

export interface ShareOptions {
  /** As the sender gives it; nothing here knows what day it is. */
  readonly date?: string;
  /** Name of the workbook the copy is made from. */
  readonly source?: string;
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

/** Sheets for the supplier first, the others in their order, where the values come from last. */
function orderOf(live: LiveWorkbook, link: string): CopiedSheet[] {
  const rank = ({ name }: CopiedSheet) => {
    const place = SUPPLIER_SHEETS.findIndex((wanted) => wanted.toLowerCase() === name.toLowerCase());
    return place < 0 ? SUPPLIER_SHEETS.length : place;
  };
  const copied = live.main.listed.map((name, from): CopiedSheet => ({ name, from }));
  const ordered = [...copied].sort((a, b) => rank(a) - rank(b));
  return [...ordered, { name: PROVENANCE, from: undefined, link }];
}

function refuseCopyOfCopy(live: LiveWorkbook): void {
  if (live.main.listed.some((name) => name.toLowerCase() === PROVENANCE.toLowerCase())) {
    throw new FileRefusal(
      `The workbook has a sheet called ${PROVENANCE} already: it is a copy itself, or that sheet needs another name.`,
    );
  }
}

/** Replaces formulas by values and lays the formulas into notes, sheet by sheet. */
function fixSheets(current: LiveWorkbook, formulasOf: ReadonlyMap<string, readonly Note[]>): void {
  const { file } = current;
  for (const sheet of current.sheets) {
    const { part, name } = sheet.listed;
    file.setText(part, withoutRulesOn(part, withFixedValues(current, sheet), isLive));
    addNotes(file, part, formulasOf.get(name) ?? []);
  }
}

function listSheets(current: LiveWorkbook, link: string): void {
  const { file, main } = current;
  const order = orderOf(current, link);
  file.setText(main.name, withSheets(main.name, file.text(main.name), order, main.names, isLive));
  for (const { listed } of current.sheets) {
    const isFirst = listed.position === order[0]?.from;
    file.setText(listed.part, withTabChosen(listed.part, file.text(listed.part), isFirst));
  }
}

const lines = (remarks: readonly CellRemark[]) =>
  remarks.map(({ sheet, cell, text }) => [sheet, cell, text] as const);

/**
 * Makes a copy of a workbook for someone without the add-in: calculated, every formula replaced by its value and
 * kept as a note, what a supplier acts on first, and a sheet that says where the values come from. Nothing of an
 * add-in, of other files or of the order of calculation is left in it.
 *
 * @throws FileRefusal for a file that cannot be read, or a copy that would still hold a trace of an add-in.
 */
export async function shareCopy(bytes: Uint8Array, options: ShareOptions = {}): Promise<ShareCopy> {
  const progress = options.onProgress ?? (() => undefined);
  const live = readLiveWorkbook(bytes);
  refuseCopyOfCopy(live);
  progress("calculating");
  const done = await calculateFile(live);
  writeResults(live, done);
  const notes = new Map(
    live.sheets.map(({ listed, formulas }) => [
      listed.name,
      [...formulas.values()].map((formula) => noteFor(formula, done)),
    ]),
  );
  const inputs = inputsOf(live);
  progress("copying values");
  const current = readLiveWorkbook(live.file.save());
  const digest = await digestOf(valuesOf(current), PROVENANCE);
  const formulas = live.sheets.reduce((sum, sheet) => sum + sheet.formulas.size, 0);
  const [left, errors] = [leftAsTheyWere(done), errorsOf(live, done)];
  fixSheets(current, notes);
  stripLiveParts(current.file, current);
  const origin = { date: options.date ?? "", source: options.source ?? "", formulas, digest };
  const link = addProvenance(current.file, current.main.name, {
    ...origin,
    left: lines(left),
    errors: lines(errors),
    inputs,
  });
  listSheets(current, link);
  refuseTraces(current.file);
  const hidden = live.main.sheets.filter(({ isHidden }) => isHidden).map(({ name }) => name);
  return { bytes: current.file.save(), formulas, digest, left, errors, hidden };
}
