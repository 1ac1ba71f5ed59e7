import type { TableInput } from "../../../engine/workbook-input";
import { cellName, placeOf, type Rectangle } from "../../../formula/addresses";
import { shifted } from "../../../formula/references";
import { typedFormula } from "../../../formula/stored-form";
import { FileRefusal } from "../package/file-refusal";
import { openWorkbook } from "../package/open-workbook";
import type { Package } from "../package/package";
import { readSharedStrings } from "../strings";
import { readSheet } from "./read-sheet";
import type { StoredCell, StoredSheet } from "./stored-sheet";
import { tablesOf } from "./tables";
import { type ListedSheet, readWorkbookPart, type WorkbookPart } from "./workbook-part";

/** A formula of a workbook file, shared ones written out for their own cell. */
export interface LiveFormula {
  readonly sheet: string;
  readonly cell: StoredCell;
  /** As the file spells it, without the equals sign. */
  readonly stored: string;
  /** As it is typed. */
  readonly typed: string;
  /** What it says apart from its addresses and numbers, as the file spells it; nothing for one that is like no other. */
  readonly form: string | undefined;
  /** `plain` gives one value; `array` fills a fixed area; `dynamic` as many cells as it gives values. */
  readonly kind: "plain" | "array" | "dynamic" | "dataTable";
  readonly area: Rectangle;
}

export interface LiveSheet {
  readonly listed: ListedSheet;
  readonly stored: StoredSheet;
  /** By place on the sheet. */
  readonly formulas: ReadonlyMap<number, LiveFormula>;
}

/** A workbook file with all that is needed to calculate it and to write into it. */
export interface LiveWorkbook {
  readonly file: Package;
  readonly main: WorkbookPart;
  readonly sheets: readonly LiveSheet[];
  readonly strings: readonly string[];
  readonly tables: readonly TableInput[];
}

type SharedText = ReadonlyMap<string, StoredCell>;

function textOf(cell: StoredCell, shared: SharedText): string {
  const { formula } = cell;
  if (formula === undefined) return "";
  const master = formula.kind === "shared" ? shared.get(formula.sharedIndex ?? "") : undefined;
  if (formula.text !== "" || master?.formula === undefined) return formula.text;
  return shifted(master.formula.text, cell.row - master.row, cell.column - master.column);
}

function kindOf({ formula, isDynamic }: StoredCell): LiveFormula["kind"] {
  if (formula?.kind === "dataTable") return "dataTable";
  if (formula?.kind !== "array") return "plain";
  return isDynamic ? "dynamic" : "array";
}

/** More than any plan has; a damaged file may name a whole sheet, which would take days to fill. */
const MAX_FILLED = 200_000;

function refuseVast(sheet: string, { cell, area }: Pick<LiveFormula, "cell" | "area">): void {
  const filled = (area.lastRow - area.row + 1) * (area.lastColumn - area.column + 1);
  if (filled <= MAX_FILLED) return;
  throw new FileRefusal(
    `The formula in ${sheet}!${cellName(cell.row, cell.column)} fills ${filled} cells; at most ${MAX_FILLED} are calculated. Let it fill fewer.`,
  );
}

function formulasOf(sheet: string, stored: StoredSheet): Map<number, LiveFormula> {
  const cells = stored.rows.flatMap((row) => row.cells.filter(({ formula }) => formula !== undefined));
  const masters = cells.filter(({ formula }) => formula?.kind === "shared" && formula.text !== "");
  const shared = new Map(masters.map((cell) => [cell.formula?.sharedIndex ?? "", cell] as const));
  return new Map(
    cells.map((cell) => {
      const text = textOf(cell, shared);
      const kind = kindOf(cell);
      const own = { row: cell.row, column: cell.column, lastRow: cell.row, lastColumn: cell.column };
      const area = kind === "plain" ? own : (cell.formula?.area ?? own);
      refuseVast(sheet, { cell, area });
      return [
        placeOf(cell.row, cell.column),
        { sheet, cell, stored: text, ...typedFormula(text), kind, area },
      ];
    }),
  );
}

/** A plan of 500 filled lines has some 723,000 cells, half of them formulas; many more would fill memory. */
const MAX_CELLS = 1_000_000;

/** A plan has some hundred names; the engine takes them in one by one, ever slower. */
const MAX_NAMES = 5000;

function refuseManyNames({ names }: WorkbookPart): void {
  if (names.length <= MAX_NAMES) return;
  throw new FileRefusal(
    `The file defines more than ${MAX_NAMES.toLocaleString("en-GB")} names; no more are read. Delete names that are not needed.`,
  );
}

/** Reads a workbook file. @throws FileRefusal with a sentence where it cannot be read or must not be touched. */
export const readLiveWorkbook = (bytes: Uint8Array): LiveWorkbook => readWith(bytes, () => undefined);

/**
 * The workbook as it stands in its file with all changes. Sheets whose parts were left alone are those that were read:
 * read twice, a plan of many lines would fill memory twice.
 */
export function withChangesRead(live: LiveWorkbook): LiveWorkbook {
  const { file, main, sheets } = live;
  if (!file.isChanged) return live;
  const areTextsSame = main.sharedStrings === undefined || !file.hasChanged(main.sharedStrings);
  const unchanged = areTextsSame ? sheets.filter(({ listed }) => !file.hasChanged(listed.part)) : [];
  const known = new Map(unchanged.map((sheet) => [sheet.listed.part, sheet]));
  return readWith(file.save(), ({ part, name }) => {
    const before = known.get(part);
    return before?.listed.name === name ? before : undefined;
  });
}

/** @param known - A sheet as it was read before, where its part is the same. */
function readWith(bytes: Uint8Array, known: (listed: ListedSheet) => LiveSheet | undefined): LiveWorkbook {
  const { file, main } = openWorkbook(bytes);
  const part = readWorkbookPart(file, main);
  refuseManyNames(part);
  let cells = 0;
  const sheets = part.sheets.map((listed): LiveSheet => {
    const before = known(listed);
    const stored = before?.stored ?? readSheet(listed.part, file.text(listed.part));
    cells += stored.rows.reduce((sum, row) => sum + row.cells.length, 0);
    if (cells > MAX_CELLS)
      throw new FileRefusal(
        `The file holds more than ${MAX_CELLS.toLocaleString("en-GB")} cells; no more are read. Delete sheets that are not needed.`,
      );
    return { listed, stored, formulas: before?.formulas ?? formulasOf(listed.name, stored) };
  });
  return {
    file,
    main: part,
    sheets,
    strings: readSharedStrings(file, part.sharedStrings),
    tables: part.sheets.flatMap((sheet) => tablesOf(file, sheet)),
  };
}
