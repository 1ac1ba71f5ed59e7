import type { Cell } from "./cells";
import { answeredColumns, type Column, type WorksheetFunction } from "./declare";
import { evaluate } from "./evaluate";

/** A row of an answer by the labels of its columns. */
export type AnswerRecord = Readonly<Record<string, Cell>>;

/** A label that stands again is counted: a range that lies across gives a column a cell. */
function recordOf(row: readonly Cell[], columns: readonly Column[]): AnswerRecord {
  const record: Record<string, Cell> = {};
  row.forEach((cell, place) => {
    const label = columns[place]?.label ?? "answer";
    record[Object.hasOwn(record, label) ? `${label} ${place + 1}` : label] = cell;
  });
  return record;
}

/**
 * Answers one call as `evaluate` does, each row as an object by the labels of its columns, as `result` of the
 * declaration names them: `[{ low: 59, likely: 62, … }]`. A refusal stands under its column, or under the first where
 * the whole row is refused.
 */
export function evaluateRecords(fn: WorksheetFunction, raw: readonly unknown[]): readonly AnswerRecord[] {
  return evaluate(fn, raw).map((row) => {
    const columns = fn?.parameters === undefined ? [] : answeredColumns(fn, row.length);
    return recordOf(row, columns);
  });
}
