import type { CellRemark } from "../workbook/file/patch/recalculate";

const SHOWN = 20;

/** Remarks on cells, one a line under a heading; nothing where there are none. */
export function listedRemarks(title: string, remarks: readonly CellRemark[]): string {
  if (remarks.length === 0) return "";
  const lines = remarks.slice(0, SHOWN).map(({ sheet, cell, text }) => `  ${sheet}!${cell}  ${text}\n`);
  const more = remarks.length > SHOWN ? `  and ${remarks.length - SHOWN} more\n` : "";
  return `${title}\n${lines.join("")}${more}`;
}

/** `1 value`, `2 values`. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
