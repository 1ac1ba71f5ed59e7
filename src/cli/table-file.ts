import { extname } from "node:path";
import { parse } from "papaparse";
import { sentenceOf } from "../core/refusal";
import type { CellValue } from "../engine/cell-value";
import { contentOf } from "../workbook/file/cell-content";
import { decodedText } from "../workbook/file/decoded-text";
import { FileRefusal } from "../workbook/file/package/file-refusal";
import { readLiveWorkbook } from "../workbook/file/read/live-workbook";
import { isPlan, planTable } from "../workbook/sheets/plan-table";
import { readWhole } from "./files";

/** A cell of a table; `undefined` where nothing stands. */
type Filled = CellValue | undefined;

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
/** More rows than any run holds; a sheet of the engine ends there too. */
const MAX_ROWS = 100_000;

/** A cell of a text file: a number where it reads as one, else text, never a formula. */
function fromText(text: string): Filled {
  const tidy = text.trim();
  if (tidy === "") return undefined;
  return { value: NUMBER.test(tidy) ? Number(tidy) : text };
}

function fromCsv(file: string, text: string): Filled[][] {
  const { data, errors } = parse<string[]>(text.replace(/^\uFEFF/, ""), { skipEmptyLines: true });
  const [problem] = errors.filter(({ type }) => type === "Quotes");
  if (problem !== undefined) {
    throw new FileRefusal(`${file}: row ${(problem.row ?? 0) + 1}: ${problem.message}`);
  }
  return data.map((row) => row.map(fromText));
}

function fromValue(value: unknown): Filled {
  if (value === null || value === undefined || value === "") return undefined;
  if (typeof value === "string" || typeof value === "number" || typeof value === "boolean") return { value };
  throw new FileRefusal("a cell holds a list or an object; give numbers and texts");
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The lines of a planning workbook brought together, else the first sheet of a workbook as it stands. */
function fromWorkbook(file: string): Filled[][] {
  const live = readLiveWorkbook(readWhole(file).bytes);
  if (isPlan(live)) return planTable(live).map((row) => row.map(fromValue));
  const [sheet] = live.sheets;
  const rows: Filled[][] = [];
  for (const { row, cells } of sheet?.stored.rows ?? []) {
    const filled: Filled[] = [];
    for (const cell of cells) filled[cell.column] = contentOf(cell, live.strings, live.main.from1904);
    rows[row] = filled;
  }
  return Array.from(rows, (row) => Array.from(row ?? [])).filter((row) =>
    row.some((cell) => cell !== undefined),
  );
}

/** A list of lists, or a list of objects whose keys become the headings. */
function fromJson(file: string, text: string): Filled[][] {
  const rows = parsed(file, text);
  if (!Array.isArray(rows)) throw new FileRefusal(`${file}: give a list of rows`);
  if (rows.every((row) => Array.isArray(row))) return rows.map((row) => row.map(fromValue));
  if (!rows.every(isRecord))
    throw new FileRefusal(`${file}: give every row as a list, or every row as an object`);
  const headings = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return [
    headings.map((value) => ({ value })),
    ...rows.map((row) => headings.map((heading) => fromValue(row[heading]))),
  ];
}

function parsed(file: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (problem) {
    throw new FileRefusal(`${file}: not JSON: ${sentenceOf(problem)}`);
  }
}

const textIn = (file: string): string => decodedText(readWhole(file).bytes);

const READERS: Readonly<Record<string, (file: string) => Filled[][]>> = {
  ".csv": (file) => fromCsv(file, textIn(file)),
  ".json": (file) => fromJson(file, textIn(file)),
  ".xlsx": fromWorkbook,
};

/**
 * Reads a table for a formula to work on.
 *
 * @param file - A .csv (comma, semicolon or tab between cells), a .json file, or an .xlsx: of a planning workbook its
 *   lines, of another its first sheet.
 * @throws FileRefusal naming the file and what is wrong with it.
 */
export function readTable(file: string): readonly (readonly Filled[])[] {
  const ending = extname(file).toLowerCase();
  const read = READERS[ending];
  if (read === undefined) throw new FileRefusal(`${file}: give a .csv, a .json or an .xlsx file`);
  const rows = read(file);
  if (rows.length === 0) throw new FileRefusal(`${file}: it holds no rows`);
  if (rows.length > MAX_ROWS) throw new FileRefusal(`${file}: ${rows.length} rows, more than ${MAX_ROWS}`);
  return rows;
}
