import { cellName, rectangleName } from "../../../formula/addresses";
import { contentOf } from "../../file/cell-content";
import { relationshipsOf } from "../../file/package/relationships";
import { walkXml } from "../../file/package/xml";
import type { CellRemark } from "../../file/patch/recalculate";
import type { LiveSheet, LiveWorkbook } from "../../file/read/live-workbook";
import { readLayout } from "../../file/read/read-layout";
import { readStylesOf } from "../../file/read/workbook-styles";
import type { CellStyle } from "../../model/workbook-data";
import { cannotBeRead } from "../sight";
import { noteTexts } from "./note-texts";

/** What a sheet shows beside its values: by place, in words that two files can be compared by. */
type Shown = ReadonlyMap<string, string>;

/** A cell's format in words that do not depend on the program that wrote it. */
const formatWords = (format = "") => format.replace(/\\(.)/g, "$1").replaceAll('"', "").toLowerCase();

const WHITE = "#ffffff";
/** What of a style decides what a reader takes a value for. */
function lookOf(style: CellStyle = {}): string {
  const { fill = WHITE } = style;
  const words = [
    `format ${formatWords(style.format) || "general"}`,
    ...(fill.toLowerCase() === WHITE ? [] : [`colour ${fill.toLowerCase()}`]),
    ...(style.strike ? ["struck out"] : []),
    ...(cannotBeRead(style) ? ["letters that cannot be seen"] : []),
  ];
  return words.join(", ");
}

function cellLooks(book: LiveWorkbook, sheet: LiveSheet, styles: readonly CellStyle[]): [string, string][] {
  return sheet.stored.rows.flatMap(({ cells }) =>
    cells.flatMap((cell): [string, string][] => {
      const content = contentOf(cell, book.strings, book.main.from1904);
      const isEmpty = content === undefined || ("value" in content && content.value === "");
      const look = lookOf(styles[Number(cell.style ?? 0)]);
      return isEmpty ? [] : [[`${cellName(cell.row, cell.column)} look`, look]];
    }),
  );
}

const isNumbered = (xml: string, start: number, end: number) => /\sr\s*=/.test(xml.slice(start, end));

/** The names that stand in a list more than once. */
function repeated(names: readonly string[]): string[] {
  const seen = new Set<string>();
  return names.filter((name) => seen.size === seen.add(name).size);
}

/** Cells and rows that stand twice or without an address: programs read them differently. */
function unclear({ stored: { rows, xml } }: LiveSheet): [string, string][] {
  const cells = rows.flatMap(({ row, cells: own }) => own.map((cell) => ({ ...cell, inRow: row })));
  const places = cells.map(({ row, column }) => cellName(row, column));
  const bareRows = rows.filter(({ start, tagEnd }) => !isNumbered(xml, start, tagEnd));
  const bareCells = cells.filter(({ start, tagEnd }) => !isNumbered(xml, start, tagEnd));
  const astray = cells.filter(({ row, inRow }) => row !== inRow);
  return [
    ...repeated(rows.map(({ row }) => `row ${row + 1}`)).map((row): [string, string] => [
      row,
      "stands twice",
    ]),
    ...repeated(places).map((place): [string, string] => [`${place} twice`, "stands twice"]),
    ...bareRows.map(({ row }): [string, string] => [`row ${row + 1} bare`, "stands without its number"]),
    ...bareCells.map((cell): [string, string] => [
      `${cellName(cell.row, cell.column)} bare`,
      "stands without its address",
    ]),
    ...astray.map((cell): [string, string] => [
      `${cellName(cell.row, cell.column)} row`,
      `stands in row ${cell.inRow + 1}`,
    ]),
  ];
}

/** Elements that change what is shown or typed, with what they are called. */
const COUNTED: Readonly<Record<string, string>> = {
  cfRule: "rules for colours and formats",
  dataValidation: "rules for what may be typed",
  filterColumn: "filters",
  hyperlink: "links",
  oleObject: "objects",
  control: "controls",
};

function counts(sheet: LiveSheet): [string, string][] {
  const found = new Map<string, number>();
  walkXml(sheet.listed.part, sheet.stored.xml, {
    open({ name }) {
      const words = COUNTED[name];
      if (words !== undefined) found.set(words, (found.get(words) ?? 0) + 1);
    },
  });
  return [...found].map(([words, count]) => [words, String(count)]);
}

/** Pictures, charts and boxes: one laid over a figure shows another. */
function drawings(book: LiveWorkbook, sheet: LiveSheet): [string, string][] {
  const parts = relationshipsOf(book.file, sheet.listed.part).filter(({ kind }) => kind === "drawing");
  return parts.flatMap(({ part }): [string, string][] => {
    if (part === undefined || !book.file.has(part)) return [];
    let anchors = 0;
    walkXml(part, book.file.text(part), {
      open: ({ name }) => {
        if (/Anchor$/.test(name)) anchors += 1;
      },
    });
    return anchors === 0 ? [] : [["pictures, charts and boxes", String(anchors)]];
  });
}

/** Everything a sheet shows beside its values. */
function shownOn(book: LiveWorkbook, sheet: LiveSheet, styles: ReturnType<typeof readStylesOf>): Shown {
  const { part, isHidden } = sheet.listed;
  const layout = readLayout(part, sheet.stored, styles.ruleFills);
  const filled = new Set(
    sheet.stored.rows.flatMap(({ cells }) =>
      cells.flatMap(({ row, raw }) => (raw === undefined ? [] : [row])),
    ),
  );
  const hiddenRows = [...layout.rows].filter(
    ([row, band]) => (band.isHidden || band.size === 0) && filled.has(row),
  );
  const columns = layout.hiddenColumns.filter(([first]) => first < 1000);
  return new Map<string, string>([
    ...cellLooks(book, sheet, styles.styles),
    ...hiddenRows.map(([row]): [string, string] => [`row ${row + 1}`, "hidden"]),
    ...columns.flatMap(([first, last]) =>
      Array.from({ length: Math.min(last, 1000) - first + 1 }, (_, at): [string, string] => [
        `column ${cellName(0, first + at).slice(0, -1)}`,
        "hidden",
      ]),
    ),
    ...layout.merged.map((area): [string, string] => [`cells ${rectangleName(area)}`, "merged"]),
    ...[...noteTexts(book.file, part)].map(([cell, text]): [string, string] => [`${cell} note`, text.trim()]),
    ...unclear(sheet),
    ...counts(sheet),
    ...drawings(book, sheet),
    ...(isHidden ? [["the sheet", "hidden"] as [string, string]] : []),
  ]);
}

const short = (text: string) => (text.length > 60 ? `${text.slice(0, 59)}…` : text);

function remarksOn(sheet: string, made: Shown, found: Shown): CellRemark[] {
  const places = new Set([...made.keys(), ...found.keys()]);
  return [...places].flatMap((place): CellRemark[] => {
    const [before, now] = [made.get(place), found.get(place)];
    if (before === now) return [];
    const text = `as made: ${short(before ?? "nothing")}; in the copy: ${short(now ?? "nothing")}`;
    return [{ sheet, cell: place, text }];
  });
}

/**
 * What two copies of the same sheets show differently beside their values: number formats and colours of filled cells,
 * hidden rows, columns and sheets, merged cells, notes, rules, drawings, and cells that programs read differently.
 *
 * @param made - The copy as it comes out when it is made anew.
 * @param found - The copy that is looked at.
 */
export function shownDifferently(made: LiveWorkbook, found: LiveWorkbook): CellRemark[] {
  const [before, now] = [readStylesOf(made), readStylesOf(found)];
  const own = new Map(made.sheets.map((sheet) => [sheet.listed.name, sheet]));
  return found.sheets.flatMap((sheet) => {
    const expected = own.get(sheet.listed.name);
    if (expected === undefined) return [];
    return remarksOn(sheet.listed.name, shownOn(made, expected, before), shownOn(found, sheet, now));
  });
}
