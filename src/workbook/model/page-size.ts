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
