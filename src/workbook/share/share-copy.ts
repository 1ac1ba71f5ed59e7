import { placeOf } from "../../formula/addresses";
import { isOurs } from "../file/beyond-engine";
import { FileRefusal } from "../file/package/file-refusal";
import type { Calculation } from "../file/patch/calculation";
import { type CellRemark, errorsOf, leftAsTheyWere } from "../file/patch/recalculate";
import { nameOf } from "../file/patch/sheet-editor";
import { WorkbookFile } from "../file/patch/workbook-file";
import type { LiveFormula, LiveWorkbook } from "../file/read/live-workbook";
import { writeWorkbook } from "../file/write/write-workbook";
import { isPlanning } from "../model/plan-names";
import { withGrownRows } from "../model/row-heights";
import { withAllowedNames } from "../model/sheet-names";
import { curvesOf } from "../model/table-curves";
import type { SheetData } from "../model/workbook-data";
import { LOG_SHEET } from "../sheets/sheets-of-the-plan";
import { Asking } from "./asking";
import { type Choice, chosenSheets } from "./audience";
import type { ForOne } from "./for-one";
import { inputsOf } from "./inputs";
import { type KeptSheet, KeptSheets } from "./kept-sheets";
import { ALL_LINES, LABELS, type Origin, PROVENANCE, provenanceLines, provenanceSheet } from "./provenance";
import type { Recipient } from "./recipient";
import { keptSheets, noteFor, sharedSheets, staysBehind, unseenCells } from "./shared-sheets";
import type { Signer } from "./signature";
import { digestOf, valuesOfSheets } from "./values";

export interface ShareOptions {
  /** As the sender gives it; nothing here knows what day it is. */
  readonly date?: string;
  /** Name of the workbook the copy is made from. */
  readonly source?: string;
  /** What is shared; every sheet that can be seen unless given. */
  readonly choice?: Choice;
  /** For whom, where the sheets were chosen for somebody; by the choice unless given. */
  readonly recipient?: Recipient;
  /** By when an answer is wanted, as the sender says it. */
  readonly by?: string;
  /** Signs the copy, where the sender has a key. */
  readonly signer?: Signer;
  readonly onProgress?: (words: string) => void;
}

/** A copy that holds values only. */
export interface ShareCopy {
  readonly bytes: Uint8Array;
  readonly formulas: number;
  readonly digest: string;
  /** Names of the sheets in it that came from the workbook. */
  readonly sheets: readonly string[];
  /** Number of a copy that asks for an answer. */
  readonly number: string | undefined;
  readonly left: readonly CellRemark[];
  readonly errors: readonly CellRemark[];
  /** Hidden sheets that are in the copy: whoever gets it can show them. */
  readonly hidden: readonly string[];
  /** How many sheets of the workbook are not in the copy. */
  readonly leftOut: number;
  /** Everything that is in the copy, in words, for a look before it is sent. */
  readonly travels: readonly string[];
  /** What stood on the shared sheets and is not in the copy. */
  readonly staysBehind: readonly string[];
}

function refuseUnfit(live: LiveWorkbook): void {
  if (live.main.listed.some((name) => name.toLowerCase() === PROVENANCE.toLowerCase())) {
    throw new FileRefusal(
      `The workbook has a sheet called ${PROVENANCE} already: it is a copy itself, or that sheet needs another name.`,
    );
  }
}

/** Beyond so many, notes make a copy slow to open: the formulas of the spreadsheet program itself then go without. */
const MAX_NOTES = 5000;

/** The formulas of the shared sheets that a note keeps. */
function notedFormulas(live: LiveWorkbook, kept: KeptSheets): LiveFormula[] {
  const names = new Set(kept.kept.map(({ sheet }) => sheet.listed.name));
  const all = live.sheets
    .filter(({ listed }) => names.has(listed.name))
    .flatMap(({ formulas }) => [...formulas.values()]);
  const noted = all.length <= MAX_NOTES ? all : all.filter(isOurs);
  return noted.filter((formula) => kept.mayTravel(formula));
}

function notesBySheet(formulas: readonly LiveFormula[], done: Calculation) {
  const notes = new Map<string, Map<number, string>>();
  for (const formula of formulas) {
    const own = notes.get(formula.sheet) ?? new Map<number, string>();
    own.set(placeOf(formula.cell.row, formula.cell.column), noteFor(formula, done));
    notes.set(formula.sheet, own);
  }
  return notes;
}

const linesOf = (remarks: readonly CellRemark[]) =>
  remarks.map(({ sheet, cell, text }) => [sheet, cell, text] as const);

/** The code of an error without its sentence, which may tell of cells that are not in the copy. */
const codeOf = ({ text, ...place }: CellRemark): CellRemark => ({
  ...place,
  text: text.split(":")[0] ?? text,
});

/** What there is to say about the formulas of a calculated workbook, on the sheets and cells that are shared. */
function accountOf(
  live: LiveWorkbook,
  done: Calculation,
  { sheets, moved }: ForOne,
  noted: readonly LiveFormula[],
) {
  const filled = new Set(
    sheets.flatMap(({ name, cells }) =>
      cells.flatMap((cell) => (cell.content === undefined ? [] : [`${name}!${nameOf(cell)}`])),
    ),
  );
  const told = new Set(noted.map(({ sheet, cell }) => `${sheet}!${nameOf(cell)}`));
  const key = ({ sheet, cell }: Pick<CellRemark, "sheet" | "cell">) => `${sheet}!${cell}`;
  const isInCopy = (sheet: string, cell: string) => filled.has(`${sheet}!${moved(sheet, cell)}`);
  const isShared = ({ sheet, cell }: CellRemark) => isInCopy(sheet, cell);
  const inCopy = (remark: CellRemark) => ({ ...remark, cell: moved(remark.sheet, remark.cell) ?? "" });
  const formulas = live.sheets.flatMap(({ formulas: own }) => [...own.values()]);
  return {
    formulas: formulas.filter(({ sheet, cell }) => isInCopy(sheet, nameOf(cell))).length,
    left: leftAsTheyWere(done)
      .filter(isShared)
      .map((remark) => (told.has(key(remark)) ? remark : { ...remark, text: "not calculated here" }))
      .map(inCopy),
    errors: errorsOf(live, done)
      .filter(isShared)
      .map((remark) => (told.has(key(remark)) ? remark : codeOf(remark)))
      .map(inCopy),
    inputs: inputsOf(live)
      .filter(([sheet, cell]) => isInCopy(sheet, cell))
      .map(([sheet, cell, content]) => [sheet, moved(sheet, cell) ?? "", content] as const),
  };
}

const sumOf = (sheets: readonly SheetData[], count: (sheet: SheetData) => number) =>
  sheets.reduce((sum, sheet) => sum + count(sheet), 0);

function travelling(origin: Origin, sheets: readonly SheetData[], hidden: readonly string[]): string[] {
  const names = sheets.map(({ name }) => name);
  const cells = sumOf(sheets, ({ cells: all }) => all.filter(({ content }) => content !== undefined).length);
  const charts = sumOf(sheets, (sheet) => curvesOf(sheet).length);
  const source = origin.source === "" ? "" : `, name of the workbook "${origin.source}"`;
  const date = origin.date === "" ? "" : `, date "${origin.date}"`;
  return [
    `Sheets: ${names.join(", ")} (${cells} values with number formats, colours, widths and print set-up)`,
    ...(charts === 0 ? [] : [`Charts: ${charts}, each drawn from cells of its own sheet`]),
    ...(hidden.length === 0
      ? []
      : [`Hidden sheets, which whoever gets the copy can show: ${hidden.join(", ")}`]),
    ...(origin.noted === 0
      ? []
      : [`Notes: the text of ${origin.noted} formulas that read cells of these sheets only`]),
    ...(origin.enquiry === ""
      ? []
      : [
          `Enquiry about ${origin.enquiry === ALL_LINES ? "all lines" : `lines ${origin.enquiry}`}, no order: ${origin.audience}`,
        ]),
    ...(origin.asked === undefined
      ? []
      : [
          `Cells for an answer: ${origin.asked.lines.reduce((sum, [, , count]) => sum + Number(count), 0)} in ${origin.asked.lines.length} lines, the only ones that are not locked; number of the copy ${origin.asked.number}`,
        ]),
    `Sheet ${PROVENANCE}: version${source}${date}, counts of formulas and of sheets left out, ${origin.inputs.length} typed inputs and ${origin.errors.length} errors of these sheets`,
  ];
}

/** The sheets of a copy, before the one that says where they come from. */
export interface SharedBook {
  readonly sheets: readonly SheetData[];
  readonly origin: Origin;
  readonly from1904: boolean;
  readonly hidden: readonly string[];
  readonly left: readonly CellRemark[];
  readonly errors: readonly CellRemark[];
  readonly kept: readonly KeptSheet[];
  /** The workbook with its results written into it. */
  readonly current: LiveWorkbook;
}

/**
 * Builds the sheets of a copy anew from what may travel; nothing of the file itself is carried over.
 *
 * @throws FileRefusal for a file that cannot be read, or a sheet that is not there.
 */
async function sharedBook(bytes: Uint8Array, options: ShareOptions = {}): Promise<SharedBook> {
  const progress = options.onProgress ?? (() => undefined);
  const choice = options.choice ?? { kind: "all" };
  const file = WorkbookFile.of(bytes);
  const { live } = file;
  refuseUnfit(live);
  const names = chosenSheets(live, choice);
  progress("calculating");
  const { done, current } = await file.calculated();
  progress("copying values");
  const kept = keptSheets(current, names);
  const asking = new Asking(current, names, { ...options, choice });
  const noted = asking.hasMovedRows ? [] : notedFormulas(live, new KeptSheets(live, kept));
  const own = asking.ownSheets(sharedSheets(current, kept, notesBySheet(noted, done)));
  const account = accountOf(live, done, own, noted);
  const { sheets, asked } = await asking.withTables(own.sheets);
  const isShared = (name: string) => own.sheets.some((sheet) => sheet.name === name);
  const origin: Origin = {
    date: options.date ?? "",
    source: options.source ?? "",
    audience: asking.audience,
    enquiry: asking.enquiry,
    ...(asked && { asked }),
    formulas: account.formulas,
    leftOut: live.main.listed.filter((name) => name !== LOG_SHEET && !isShared(name)).length,
    noted: noted.length,
    left: linesOf(account.left),
    errors: linesOf(account.errors),
    inputs: account.inputs,
  };
  const hidden = kept.flatMap(({ sheet }) => (sheet.listed.isHidden ? [sheet.listed.name] : []));
  return {
    ...account,
    sheets,
    origin,
    hidden,
    kept,
    current,
    from1904: live.main.from1904,
  };
}

/** The sheets that are made here are printed on the paper of those that came from the workbook. */
function onPaperOf(shared: readonly SheetData[], all: readonly SheetData[]): SheetData[] {
  const paper = shared.find(({ print }) => print?.paper !== undefined)?.print?.paper;
  return all.map((sheet) =>
    paper === undefined || sheet.print === undefined ? sheet : { ...sheet, print: { ...sheet.print, paper } },
  );
}

/** A hidden sheet must not be the one that opens. */
const visibleFirst = (sheets: readonly SheetData[]) =>
  [...sheets].sort((a, b) => Number(a.isHidden) - Number(b.isHidden));

/**
 * Makes a copy of a workbook for someone without the add-in: calculated, every formula replaced by its value, what a
 * supplier acts on first, and a sheet that says where the values come from. The copy is a new file made from values,
 * looks and print set-up of the sheets chosen, and from the text of formulas that read cells of these sheets only.
 *
 * @throws FileRefusal for a file that cannot be read, or a sheet that is not there.
 */
export async function shareCopy(bytes: Uint8Array, options: ShareOptions = {}): Promise<ShareCopy> {
  const shared = await sharedBook(bytes, options);
  const { origin, hidden, kept, current } = shared;
  const { signer } = options;
  const lines = provenanceLines(origin, signer?.publicKey);
  const { sheets } = withAllowedNames({ sheets: visibleFirst(shared.sheets), names: {}, tables: [] });
  const digest = await digestOf(valuesOfSheets([...sheets, provenanceSheet(lines, [])]));
  const shown = isPlanning(current.main.listed) ? withGrownRows(sheets) : sheets;
  const signed = signer === undefined ? [] : [[LABELS.signature, await signer.sign(digest)]];
  const book = {
    sheets: onPaperOf(shared.sheets, [
      ...shown,
      {
        ...provenanceSheet(lines, [[LABELS.digest, digest], ...signed]),
        isProtected: origin.asked !== undefined,
      },
    ]),
    names: {},
    tables: [],
    from1904: shared.from1904,
  };
  return {
    bytes: await writeWorkbook(book),
    digest,
    sheets: sheets.map(({ name }) => name),
    number: origin.asked?.number,
    formulas: origin.formulas,
    left: shared.left,
    errors: shared.errors,
    hidden,
    leftOut: origin.leftOut,
    travels: travelling(origin, sheets, hidden),
    staysBehind: [...unseenCells(current, kept), ...staysBehind(current, kept)],
  };
}
