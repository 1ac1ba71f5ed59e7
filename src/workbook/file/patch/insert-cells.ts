import { cellName, rectangleName } from "../../../formula/addresses";
import type { CellXml } from "../cell-xml";
import type { Edit } from "../package/edits";
import { withAttribute } from "../package/xml";
import type { StoredRow, StoredSheet } from "../read/stored-sheet";

/** A cell that the part does not hold yet. */
export interface NewCell {
  readonly row: number;
  readonly column: number;
  readonly inside: CellXml;
}

function cellText({ row, column, inside }: NewCell, prefix: string): string {
  return `<${prefix}c r="${cellName(row, column)}"${inside.attributes}>${inside.xml}</${prefix}c>`;
}

/** Which columns a row holds (`spans`), kept true where the row says it. */
function widened(tag: string, cells: readonly NewCell[]): string {
  const [, first, last] = /\sspans\s*=\s*["'](\d+):(\d+)["']/.exec(tag) ?? [];
  if (first === undefined || last === undefined) return tag;
  const columns = cells.map(({ column }) => column + 1);
  return withAttribute(
    tag,
    "spans",
    `${Math.min(Number(first), ...columns)}:${Math.max(Number(last), ...columns)}`,
  );
}

function intoRow(sheet: StoredSheet, row: StoredRow, cells: readonly NewCell[]): Edit[] {
  const { xml, prefix } = sheet;
  const tag = widened(xml.slice(row.start, row.tagEnd), cells);
  if (row.tagEnd === row.end) {
    const open = `${tag.slice(0, -2).trimEnd()}>`;
    const text = open + cells.map((cell) => cellText(cell, prefix)).join("");
    return [{ start: row.start, end: row.end, text: `${text}</${prefix}row>` }];
  }
  const edits = cells.map((cell): Edit => {
    const next = row.cells.find(({ column }) => column > cell.column);
    const at = next?.start ?? row.closeStart;
    return { start: at, end: at, text: cellText(cell, prefix) };
  });
  return tag === xml.slice(row.start, row.tagEnd)
    ? edits
    : [{ start: row.start, end: row.tagEnd, text: tag }, ...edits];
}

function newRow(row: number, cells: readonly NewCell[], prefix: string): string {
  const inside = cells.map((cell) => cellText(cell, prefix)).join("");
  return `<${prefix}row r="${row + 1}">${inside}</${prefix}row>`;
}

function newRows(sheet: StoredSheet, rows: readonly (readonly [number, readonly NewCell[]])[]): Edit[] {
  const { data, prefix } = sheet;
  if (
    rows.length > 0 &&
    data.tagEnd > data.closeStart - 1 &&
    sheet.xml.slice(0, data.tagEnd).endsWith("/>")
  ) {
    const inside = rows.map(([row, cells]) => newRow(row, cells, prefix)).join("");
    return [
      { start: data.start, end: data.tagEnd, text: `<${prefix}sheetData>${inside}</${prefix}sheetData>` },
    ];
  }
  return rows.map(([row, cells]) => {
    const at = sheet.rows.find((stored) => stored.row > row)?.start ?? data.closeStart;
    return { start: at, end: at, text: newRow(row, cells, prefix) };
  });
}

function dimensionEdit({ dimension, xml }: StoredSheet, cells: readonly NewCell[]): Edit[] {
  if (dimension === undefined) return [];
  const { start, end, area } = dimension;
  const grown = cells.reduce(
    (so, { row, column }) => ({
      row: Math.min(so.row, row),
      column: Math.min(so.column, column),
      lastRow: Math.max(so.lastRow, row),
      lastColumn: Math.max(so.lastColumn, column),
    }),
    area,
  );
  const name = rectangleName(grown);
  return name === rectangleName(area)
    ? []
    : [{ start, end, text: withAttribute(xml.slice(start, end), "ref", name) }];
}

/** The edits that add cells to a worksheet part, each in its place among rows and columns. */
export function insertedCells(sheet: StoredSheet, cells: readonly NewCell[]): Edit[] {
  if (cells.length === 0) return [];
  const byRow = new Map<number, NewCell[]>();
  for (const cell of [...cells].sort((a, b) => a.row - b.row || a.column - b.column)) {
    byRow.set(cell.row, [...(byRow.get(cell.row) ?? []), cell]);
  }
  const stored = new Map(sheet.rows.map((row) => [row.row, row]));
  const filled = [...byRow].flatMap(([row, added]) => {
    const existing = stored.get(row);
    return existing === undefined ? [] : intoRow(sheet, existing, added);
  });
  const fresh = [...byRow].filter(([row]) => !stored.has(row));
  return [...filled, ...newRows(sheet, fresh), ...dimensionEdit(sheet, cells)];
}
