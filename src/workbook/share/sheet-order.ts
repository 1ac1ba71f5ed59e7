import type { LiveWorkbook } from "../file/read/live-workbook";
import { PROVENANCE } from "./provenance";
import type { CopiedSheet } from "./sheet-list";

/** The sheets a supplier acts on, by the words their names begin with; they stand first in a copy. */
const SUPPLIER_SHEETS = [/^heat treat(?:ment|ing|ers?|er s)? (?:work )?order/, /^steel (?:purchase )?order/];

/** Letters in lower case, all that stands between them as one space. */
const plain = (name: string) =>
  name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

function rankOf({ name }: CopiedSheet): number {
  const place = SUPPLIER_SHEETS.findIndex((words) => words.test(plain(name)));
  return place < 0 ? SUPPLIER_SHEETS.length : place;
}

/** Sheets for the supplier first, the others in their order, where the values come from last. */
export function orderOf(live: LiveWorkbook, link: string): CopiedSheet[] {
  const copied = live.main.listed.map((name, from): CopiedSheet => ({ name, from }));
  const ordered = [...copied].sort((a, b) => rankOf(a) - rankOf(b));
  return [...ordered, { name: PROVENANCE, from: undefined, link }];
}

/** Place of the sheet that opens: the first that can be seen. */
export function openingPlace(live: LiveWorkbook, order: readonly CopiedSheet[]): number {
  const hidden = new Set(live.main.sheets.flatMap(({ position, isHidden }) => (isHidden ? [position] : [])));
  return order.findIndex(({ from }) => from === undefined || !hidden.has(from));
}
