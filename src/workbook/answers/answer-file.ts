import { parse } from "papaparse";
import { decodedText } from "../file/decoded-text";
import { FileRefusal } from "../file/package/file-refusal";
import { readLiveWorkbook } from "../file/read/live-workbook";
import { valuesOf } from "../share/values";
import { type Statements, statementsOf } from "../share/verify/statements";
import { type AnswerTable, answerTables, type CellGrid, gridOf } from "./answer-tables";

/** A file or a pasted text that came back. */
export interface AnswerSource {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What came back, read. */
export interface AnswerFile {
  readonly name: string;
  readonly tables: readonly AnswerTable[];
  /** What the copy says of itself; a text alone says nothing. */
  readonly statements: Statements | undefined;
}

/** Longer texts are no answer to a copy of ours. */
const MAX_TEXT = 5 * 2 ** 20;
const MAX_ROWS = 5000;

const isZip = ([first, second]: Uint8Array) => first === 0x50 && second === 0x4b;

/** A text as rows of texts: commas, semicolons or tabs between cells, as the text has them. */
function gridOfText(text: string): CellGrid {
  const { data } = parse<string[]>(text.replace(/^\uFEFF/, ""), { skipEmptyLines: true });
  return data.map((row) => row.map((value) => (value.trim() === "" ? undefined : { value })));
}

function fromText({ name, bytes }: AnswerSource): AnswerFile {
  if (bytes.length > MAX_TEXT)
    throw new FileRefusal(`${name}: more than 5 MB of text; an answer is smaller.`);
  return { name, tables: answerTables(gridOfText(decodedText(bytes))), statements: undefined };
}

async function fromWorkbook({ name, bytes }: AnswerSource): Promise<AnswerFile> {
  const values = valuesOf(readLiveWorkbook(bytes));
  const tables = [...values.values()].flatMap((cells) => answerTables(gridOf(cells)));
  return { name, tables, statements: await statementsOf(values) };
}

/**
 * Reads the tables of answers in a workbook, a CSV file or a text pasted from a mail.
 *
 * @throws FileRefusal where it cannot be read, holds no such table, or too many rows.
 */
export async function readAnswerFile(source: AnswerSource): Promise<AnswerFile> {
  const file = isZip(source.bytes) ? await fromWorkbook(source) : fromText(source);
  const rows = file.tables.reduce((sum, table) => sum + table.rows.length, 0);
  if (rows === 0)
    throw new FileRefusal(
      `${source.name}: no answers found. Give the copy as it came back, or its table with the headings and the column Key.`,
    );
  if (rows > MAX_ROWS)
    throw new FileRefusal(`${source.name}: ${rows} rows of answers; at most ${MAX_ROWS} are read.`);
  return file;
}
