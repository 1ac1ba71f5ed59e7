import { readRectangle, rectangleName } from "../../formula/addresses";
import { splitAddress } from "../../formula/references";
import { quotedSheet } from "../../formula/sheet-names";
import type { HostPort, HostRows } from "../../host/port";
import { runTableAround } from "./run-table";

/** A run's table as it stands on a sheet. */
export interface ReadTable {
  /** With its sheet, as a formula writes it. */
  readonly address: string;
  readonly rows: HostRows;
  /** True where the table goes on below the last row that was read. */
  readonly isCut: boolean;
}

/** Hosts hand out 20,000 cells at once. */
const ROWS_AT_ONCE = 250;
const COLUMNS = 78;
/** Rows read above the selected cell and from it on. */
const ABOVE = 250;
const BELOW = 749;

const NOT_FOUND =
  "No row of headings around the selected cell holds steel, good and yield in columns A to BZ. Select a cell of the run's table; =BLADE.RUN_HEADINGS() lists every heading.";

/** The references of rows from one to another, in parts that a host hands out. */
function parts(sheet: string, first: number, last: number): string[] {
  const count = Math.ceil((last - first + 1) / ROWS_AT_ONCE);
  return Array.from({ length: count }, (_, part) => {
    const from = first + part * ROWS_AT_ONCE;
    const lastRow = Math.min(last, from + ROWS_AT_ONCE - 1) - 1;
    return `${sheet}!${rectangleName({ row: from - 1, column: 0, lastRow, lastColumn: COLUMNS - 1 })}`;
  });
}

/**
 * Reads the run's table around the selected cell.
 *
 * @throws Error with a sentence where there is none.
 */
export async function readTableHere(port: HostPort): Promise<ReadTable> {
  const selected = await port.selection();
  const { sheet, place } = splitAddress(selected?.address ?? "");
  const cell = readRectangle(place);
  if (selected === null || sheet === null || cell === undefined)
    throw new Error("Select a cell of the run's table first.");
  const named = quotedSheet(sheet);
  const row = cell.row + 1;
  const first = Math.max(1, row - ABOVE);
  const read = await port.readValues(parts(named, first, row + BELOW), selected.address);
  const found = runTableAround(
    read.flatMap((rows) => rows ?? []),
    row - first,
  );
  if (found === null) throw new Error(NOT_FOUND);
  const top = first + found.row;
  const width = found.rows[0]?.length ?? 1;
  const area = {
    row: top - 1,
    column: found.column,
    lastRow: top + found.rows.length - 2,
    lastColumn: found.column + width - 1,
  };
  return {
    address: `${named}!${rectangleName(area)}`,
    rows: found.rows,
    isCut: top + found.rows.length - 1 >= row + BELOW,
  };
}
