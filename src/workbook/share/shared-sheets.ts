import type { CellValue } from "../../engine/cell-value";
import { cellName, placeOf, rectangleName } from "../../formula/addresses";
import { contentOf } from "../file/cell-content";
import { relationshipsOf } from "../file/package/relationships";
import type { Calculation } from "../file/patch/calculation";
import type { LiveFormula, LiveSheet, LiveWorkbook } from "../file/read/live-workbook";
import { type Layout, readLayout } from "../file/read/read-layout";
import { readStylesOf } from "../file/read/read-workbook";
import type { CellData, CellStyle, SheetData, WordColor } from "../model/workbook-data";
import { hiddenBands, isOutOfSight, type KeptSheet } from "./kept-sheets";

/** What a note keeps of a formula: its text, the cells it filled, and the sentence where it came to an error. */
export function noteFor(formula: LiveFormula, done: Calculation): string {
  const { cell } = formula;
  const area = done.areaOf(formula);
  const isWide = area.lastRow > area.row || area.lastColumn > area.column;
  const filled = formula.kind === "plain" || !isWide ? "" : `\nfilled ${rectangleName(area)}`;
  const result = done.left.has(formula) ? undefined : done.resultAt(formula, cell.row, cell.column);
  const sentence =
    result && "error" in result && result.message !== undefined ? `\n${result.error}: ${result.message}` : "";
  return `=${formula.typed}${filled}${sentence}`;
}

/** The sheets to share with their layout. @param current - The workbook with its results written into it. */
export function keptSheets(current: LiveWorkbook, names: readonly string[]): KeptSheet[] {
  const { ruleFills } = readStylesOf(current);
  return names.flatMap((name) => {
    const sheet = current.sheets.find(({ listed }) => listed.name === name);
    if (sheet === undefined) return [];
    const layout = readLayout(sheet.listed.part, sheet.stored.xml, ruleFills);
    return [{ sheet, layout, hidden: hiddenBands(layout) }];
  });
}

/** Every program keeps 15 figures of a number; with more, one that saves the copy again would change its digest. */
function settled(content: CellValue | undefined): CellValue | undefined {
  if (content === undefined || "error" in content) return content;
  const { value } = content;
  if (value === "") return undefined;
  return typeof value === "number" ? { value: Number(value.toPrecision(15)) } : content;
}

/** Number formats with nothing between their semicolons show nothing. */
const SHOWS_NOTHING = /^\s*;[\s;]*$/;

/** Colours by a word become the colour of the cell: a copy of values needs no rules. */
function colored(style: CellStyle | undefined, fill: string | undefined): CellStyle | undefined {
  return fill === undefined ? style : { ...style, fill };
}

function ruleFill(colors: readonly WordColor[], row: number, column: number, value: CellValue | undefined) {
  if (value === undefined || "error" in value || typeof value.value !== "string") return undefined;
  const words = value.value;
  return colors.find(
    ({ areas, word }) =>
      words.includes(word) &&
      areas.some(
        (area) =>
          row >= area.row && row <= area.lastRow && column >= area.column && column <= area.lastColumn,
      ),
  )?.fill;
}

/** A sheet with more formatted cells than this keeps only those with a content. */
const MAX_EMPTY_CELLS = 50_000;

interface Source {
  readonly live: LiveWorkbook;
  readonly styles: readonly CellStyle[];
  readonly notes: ReadonlyMap<number, string>;
}

function cellsOf({ sheet, layout, hidden }: KeptSheet, { live, styles, notes }: Source): CellData[] {
  const all = sheet.stored.rows.flatMap(({ cells }) => cells);
  const keepsEmpty = all.length <= MAX_EMPTY_CELLS;
  return all.flatMap((stored): CellData[] => {
    const { row, column } = stored;
    if (isOutOfSight(hidden, row, column)) return [];
    const own = styles[Number(stored.style ?? 0)];
    const isBlank = SHOWS_NOTHING.test(own?.format ?? "");
    const content = isBlank ? undefined : settled(contentOf(stored, live.strings, live.main.from1904));
    const style = colored(own, ruleFill(layout.colors, row, column, content));
    const note = isBlank ? undefined : notes.get(placeOf(row, column));
    if (content === undefined && note === undefined && !(stored.style !== undefined && keepsEmpty)) return [];
    return [{ row, column, ...(content && { content }), ...(style && { style }), ...(note && { note }) }];
  });
}

/** Rows that stand again on every printed page, where the name of the sheet for them says rows alone. */
function repeatedRows({ main }: LiveWorkbook, { listed }: LiveSheet): readonly [number, number] | undefined {
  const titles = main.names.find(
    ({ name, sheet }) => name === "_xlnm.Print_Titles" && sheet === listed.position,
  );
  const [, first, last] = /\$?(\d+):\$?(\d+)$/.exec(titles?.formula ?? "") ?? [];
  return first === undefined ? undefined : [Number(first) - 1, Number(last) - 1];
}

/** Sizes of rows and columns; those out of sight stay so, with nothing in them. */
const bands = (layout: Layout) => ({ columns: layout.columns, rows: layout.rows });

/**
 * The sheets of a copy, made from nothing but what may travel: values and styles of cells in sight, widths and
 * heights, merged cells, frozen heads, print set-up, and the notes given.
 *
 * @param current - The workbook with its results written into it.
 * @param notes - By name of the sheet and place.
 */
export function sharedSheets(
  current: LiveWorkbook,
  kept: readonly KeptSheet[],
  notes: ReadonlyMap<string, ReadonlyMap<number, string>>,
): SheetData[] {
  const { styles } = readStylesOf(current);
  return kept.map((entry): SheetData => {
    const { sheet, layout } = entry;
    const { name, isHidden } = sheet.listed;
    const repeated = repeatedRows(current, sheet);
    return {
      name,
      isHidden,
      ...bands(layout),
      cells: cellsOf(entry, { live: current, styles, notes: notes.get(name) ?? new Map() }),
      frozenRows: layout.frozenRows,
      frozenColumns: layout.frozenColumns,
      merged: layout.merged,
      offers: [],
      colors: [],
      hidesGridLines: layout.hidesGridLines,
      print: { ...layout.print, ...(repeated && { repeatedRows: repeated }) },
    };
  });
}

const KINDS: Readonly<Record<string, string>> = {
  drawing: "pictures, charts and boxes",
  table: "tables",
  pivotTable: "pivot tables",
  hyperlink: "links",
  comments: "notes written by hand",
  threadedComment: "comments",
};

/** What stands on the sheets and stays behind, in words. */
export function staysBehind(current: LiveWorkbook, kept: readonly KeptSheet[]): string[] {
  const found = new Set<string>();
  for (const { sheet, layout } of kept) {
    for (const { kind } of relationshipsOf(current.file, sheet.listed.part))
      if (KINDS[kind] !== undefined) found.add(KINDS[kind]);
    if (layout.unshown.has("colours by other rules than a word in the cell"))
      found.add("colours by rules other than a word in the cell");
    if (layout.offers.length > 0) found.add("drop-down lists");
  }
  return [...found];
}

/** Hidden rows and columns that hold something, sheet by sheet: `Lines: 2 rows, 1 column`. */
export function outOfSight(kept: readonly KeptSheet[]): string[] {
  return kept.flatMap(({ sheet, hidden }) => {
    const filled = sheet.stored.rows.flatMap(({ cells }) =>
      cells.filter(({ row, column, raw }) => raw !== undefined && isOutOfSight(hidden, row, column)),
    );
    if (filled.length === 0) return [];
    const first = filled[0];
    const address = first === undefined ? "" : cellName(first.row, first.column);
    return [
      `${sheet.listed.name}: ${filled.length} filled cells in hidden rows or columns, the first ${address}`,
    ];
  });
}
