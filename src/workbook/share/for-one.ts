import { cellName, readCellName } from "../../formula/addresses";
import type { SheetData } from "../model/workbook-data";
import { enquiryPages } from "./enquiry-pages";
import type { Kept } from "./kept-rows";
import { ownQuote } from "./own-quote";
import { addressee, pagesOf, rowsOn, withPages } from "./paper-pages";
import type { AskedForm, Recipient } from "./recipient";

/** Sheets of which only the rows of one recipient are left. */
export interface ForOne {
  readonly sheets: readonly SheetData[];
  /** Where a cell of the workbook stands in the copy; `undefined` where it does not travel. */
  moved(sheet: string, cell: string): string | undefined;
}

const isOf = (whom: string, name: string) => whom.trim().toLowerCase() === name.trim().toLowerCase();

/** The pages of a paper that are addressed to one. */
function ownPages(sheet: SheetData, name: string): readonly [SheetData, Kept] {
  const pages = pagesOf(sheet).filter(({ cells }) => isOf(addressee(cells), name));
  return withPages(sheet, pages.map(rowsOn));
}

/** Sheets of which everything travels. */
export const forAll = (sheets: readonly SheetData[]): ForOne => ({ sheets, moved: (_, cell) => cell });

/**
 * Keeps of the papers what concerns one recipient: pages addressed to that one, or the lines of that customer.
 *
 * @param papers - Names of the sheets that are papers; of other sheets nothing is taken out.
 * @param hasOthers - Whether the plan has other customers, whose address must not travel.
 */
export function forOne(
  sheets: readonly SheetData[],
  { word, name, enquiry }: Recipient,
  forms: readonly AskedForm[],
  hasOthers: boolean,
): ForOne {
  if (name === undefined) return forAll(sheets);
  const papers = new Map(
    forms.map(({ form, lines }) => [form.paper, new Set(lines.map(({ line }) => line))]),
  );
  const moves = new Map<string, Kept>();
  const own = sheets.flatMap((sheet): SheetData[] => {
    const lines = papers.get(sheet.name);
    if (lines === undefined) return [];
    const [left, kept] =
      word === "customer"
        ? ownQuote(sheet, { name, lines, hasOthers })
        : enquiry === undefined
          ? ownPages(sheet, name)
          : enquiryPages(sheet, name, lines);
    moves.set(sheet.name, kept);
    return left.cells.length === 0 ? [] : [left];
  });
  return {
    sheets: own,
    moved(sheet, cell) {
      const place = readCellName(cell);
      const row = place && moves.get(sheet)?.get(place.row);
      return place === undefined || row === undefined ? undefined : cellName(row, place.column);
    },
  };
}
