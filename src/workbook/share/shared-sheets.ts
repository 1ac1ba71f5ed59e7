import type { CellValue } from "../../engine/cell-value";
import { cellName, placeOf, rectangleName } from "../../formula/addresses";
import { contentOf } from "../file/cell-content";
import { relationshipsOf } from "../file/package/relationships";
import type { Calculation } from "../file/patch/calculation";
import type { LiveFormula, LiveSheet, LiveWorkbook } from "../file/read/live-workbook";
import { drawnOver, hasOwnChartsOnly } from "../file/read/own-charts";
import { printNames } from "../file/read/print-names";
import { type Layout, readLayout } from "../file/read/read-layout";
import type { StoredCell } from "../file/read/stored-sheet";
import { readStylesOf } from "../file/read/workbook-styles";
import { picturedColumns } from "../model/table-curves";
import type { CellData, CellStyle, SheetData, WordColor } from "../model/workbook-data";
import type { KeptSheet } from "./kept-sheets";
import { cannotBeRead, isOutOfSight, outOfSightOn } from "./sight";
import { withFigures } from "./values";

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

/** Columns from which the charts of a sheet are drawn that stand over cells beside them. */
function columnsDrawn({ file }: LiveWorkbook, { listed }: LiveSheet): ReadonlySet<number> {
  const drawn = drawnOver(file, listed.part).flatMap((words) => {
    const [first, last] = picturedColumns(words) ?? [0, -1];
    return Array.from({ length: last - first + 1 }, (_, at) => first + at);
  });
  return new Set(drawn);
}

/** What a picture shows travels with it, and whoever gets the copy sees that it does: its columns are shown there. */
function withColumnsShown(layout: Layout, shown: ReadonlySet<number>): Layout {
  if (shown.size === 0) return layout;
  const columns = new Map(
    [...layout.columns].map(([at, band]) => [at, shown.has(at) ? { ...band, isHidden: false } : band]),
  );
  const hiddenColumns = layout.hiddenColumns.flatMap(([first, last]) =>
    Array.from({ length: last - first + 1 }, (_, at) => first + at)
      .filter((at) => !shown.has(at))
      .map((at) => [at, at] as const),
  );
  return { ...layout, columns, hiddenColumns };
}

/** The sheets to share with their layout. @param current - The workbook with its results written into it. */
export function keptSheets(current: LiveWorkbook, names: readonly string[]): KeptSheet[] {
  const { styles, ruleFills } = readStylesOf(current);
  const isUnread = ({ raw, style }: StoredCell) =>
    raw !== undefined && cannotBeRead(styles[Number(style ?? 0)] ?? {});
  return names.flatMap((name) => {
    const sheet = current.sheets.find(({ listed }) => listed.name === name);
    if (sheet === undefined) return [];
    const read = readLayout(sheet.listed.part, sheet.stored, ruleFills);
    const layout = withColumnsShown(read, columnsDrawn(current, sheet));
    const unread = sheet.stored.rows.flatMap(({ cells }) => cells.filter(isUnread));
    return [{ sheet, layout, hidden: outOfSightOn(layout), unread }];
  });
}

/** A copy holds the figures that its digest counts and no more. */
function settled(content: CellValue | undefined): CellValue | undefined {
  if (content === undefined || "error" in content) return content;
  const { value } = content;
  if (value === "") return undefined;
  return typeof value === "number" ? { value: withFigures(value) } : content;
}

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

/** One cell of a copy; what cannot be read on the screen is not in it. */
function sharedCell(stored: StoredCell, layout: Layout, { live, styles, notes }: Source): CellData {
  const { row, column } = stored;
  const held = settled(contentOf(stored, live.strings, live.main.from1904));
  const own = styles[Number(stored.style ?? 0)];
  const style = colored(own, ruleFill(layout.colors, row, column, held));
  if (cannotBeRead(style ?? {})) return { row, column, ...(style && { style }) };
  const note = notes.get(placeOf(row, column));
  return { row, column, ...(held && { content: held }), ...(style && { style }), ...(note && { note }) };
}

function cellsOf({ sheet, layout, hidden }: KeptSheet, source: Source): CellData[] {
  const all = sheet.stored.rows.flatMap(({ cells }) => cells);
  const inSight = all.filter(({ row, column }) => !isOutOfSight(hidden, row, column));
  const keepsEmpty = all.length <= MAX_EMPTY_CELLS;
  const isKept = ({ content, note, style }: CellData) =>
    content !== undefined || note !== undefined || (style !== undefined && keepsEmpty);
  return inSight.map((stored) => sharedCell(stored, layout, source)).filter(isKept);
}

/** A copy has values only: its area is the one that was worked out. */
const withoutFormula = ({ printed: _, ...names }: ReturnType<typeof printNames>) => names;

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
    return {
      name,
      isHidden,
      // Rows and columns out of sight stay so, with nothing in them.
      columns: layout.columns,
      rows: layout.rows,
      cells: cellsOf(entry, { live: current, styles, notes: notes.get(name) ?? new Map() }),
      frozenRows: layout.frozenRows,
      frozenColumns: layout.frozenColumns,
      merged: layout.merged,
      offers: [],
      colors: [],
      hidesGridLines: layout.hidesGridLines,
      print: { ...layout.print, ...withoutFormula(printNames(current, sheet)) },
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

/** What is linked to a sheet and stays behind; curves that cells ask for are drawn again in the copy. */
function linkedTo({ file }: LiveWorkbook, { sheet }: KeptSheet): string[] {
  const { part } = sheet.listed;
  const kinds = relationshipsOf(file, part).map(({ kind }) => kind);
  const isAgain = (kind: string) => kind === "drawing" && hasOwnChartsOnly(file, part);
  return kinds.flatMap((kind) => (isAgain(kind) ? [] : (KINDS[kind] ?? [])));
}

/** What stands on the sheets and stays behind, in words. */
export function staysBehind(current: LiveWorkbook, kept: readonly KeptSheet[]): string[] {
  const found = new Set<string>();
  for (const entry of kept) {
    for (const words of linkedTo(current, entry)) found.add(words);
    if (entry.layout.unshown.has("colours by other rules than a word in the cell"))
      found.add("colours by rules other than a word in the cell");
    if (entry.layout.offers.length > 0) found.add("drop-down lists");
  }
  return [...found];
}

/** Filled cells that nobody sees, sheet by sheet; they are not in a copy. */
export function unseenCells(current: LiveWorkbook, kept: readonly KeptSheet[]): string[] {
  const { styles } = readStylesOf(current);
  return kept.flatMap(({ sheet, hidden }) => {
    const isUnseen = ({ row, column, style, raw }: StoredCell) =>
      raw !== undefined &&
      (isOutOfSight(hidden, row, column) || cannotBeRead(styles[Number(style ?? 0)] ?? {}));
    const unseen = sheet.stored.rows.flatMap(({ cells }) => cells.filter(isUnseen));
    const [first] = unseen;
    if (first === undefined) return [];
    const place = `${sheet.listed.name}!${cellName(first.row, first.column)}`;
    return [
      `cells that are hidden or cannot be read: ${unseen.length} on ${sheet.listed.name}, the first ${place}`,
    ];
  });
}
