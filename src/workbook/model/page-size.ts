import type { SheetData } from "./workbook-data";

/** A wider sheet, in pixels, could not be read on A4 without a glass. */
const WIDEST_ON_A4 = 1500;

/** A sheet of paper: its usual size, or the next one up for wide sheets (ISO 216; ANSI/ASME Y14.1). */
export const PAGE_SIZES = {
  A4: { width: 210, height: 297 },
  A3: { width: 297, height: 420 },
  letter: { width: 215.9, height: 279.4 },
  tabloid: { width: 279.4, height: 431.8 },
} as const;

/** Sheet of paper upright, in mm. */
export type PageName = keyof typeof PAGE_SIZES;

/** The sheet of paper that a sheet of the workbook is printed on. */
export function pageName({ print, columns }: Pick<SheetData, "print" | "columns">): PageName {
  const width = [...columns.values()].reduce((sum, { size = 0 }) => sum + size, 0);
  const isWide = print?.isPaper !== true && width > WIDEST_ON_A4;
  if (print?.paper === "letter") return isWide ? "tabloid" : "letter";
  return isWide ? "A3" : "A4";
}

/** Inches that stay free at each side and at head and foot. */
export const pageMargins = ({ print }: Pick<SheetData, "print">) =>
  print?.isPaper ? { side: 0.4, end: 0.4 } : { side: 0.4, end: 0.6 };

export const isLandscape = ({ print }: Pick<SheetData, "print">): boolean =>
  print === undefined || print.landscape;

const MM_AN_INCH = 25.4;
const PIXELS_AN_INCH = 96;
/** Points of the letters of a sheet, and those below which print is hard to read. */
const [LETTERS, LEAST_LETTERS] = [10, 8];

/** Width and height of the page in mm, as it lies. */
export function pageSize(
  sheet: Pick<SheetData, "print" | "columns">,
): readonly [width: number, height: number] {
  const { width, height } = PAGE_SIZES[pageName(sheet)];
  return isLandscape(sheet) ? [height, width] : [width, height];
}

/** Pixels that a page has across and down within its margins, its letters printed at full size. */
export function pageRoom(
  sheet: Pick<SheetData, "print" | "columns">,
): readonly [across: number, down: number] {
  const { side, end } = pageMargins(sheet);
  const pixels = (mm: number, margin: number) => (mm / MM_AN_INCH - 2 * margin) * PIXELS_AN_INCH;
  const [width, height] = pageSize(sheet);
  return [pixels(width, side), pixels(height, end)];
}

type Shown = readonly (readonly [column: number, size: number])[];

/** Columns page by page, each page no wider than the room; the first columns stand on every page. */
function stretches(columns: Shown, repeated: number, room: number): number[][] {
  const again = columns.filter(([column]) => column < repeated);
  const start = again.reduce((sum, [, size]) => sum + size, 0);
  let used = start;
  const pages = [again.map(([column]) => column)];
  for (const [column, size] of columns.slice(again.length)) {
    if (used + size > room && used > start) {
      pages.push(again.map(([first]) => first));
      used = start;
    }
    pages.at(-1)?.push(column);
    used += size;
  }
  return pages;
}

/** Columns that stand beside each other on each page: as few pages as leave the letters large enough to be read. */
export function columnsByPage(sheet: Pick<SheetData, "print" | "columns">): number[][] {
  const shown: Shown = [...sheet.columns]
    .sort(([a], [b]) => a - b)
    .flatMap(([column, { size = 0, isHidden }]) => (isHidden ? [] : [[column, size] as const]));
  const repeated = sheet.print?.repeatedColumns;
  if (repeated === undefined) return [shown.map(([column]) => column)];
  const [room] = pageRoom(sheet);
  const smallest = (LEAST_LETTERS / LETTERS) * 100;
  const few = stretches(shown, repeated, (room * 100) / smallest);
  // Of as many pages those with the largest letters.
  for (let percent = 100; percent > smallest; percent -= 1) {
    const found = stretches(shown, repeated, (room * 100) / percent);
    if (found.length === few.length) return found;
  }
  return few;
}
