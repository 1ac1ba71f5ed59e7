import { attemptOr } from "../../core/refusal";
import { readDay } from "../../workbook/answers/days";
import { momentOf } from "../../workbook/share/date-styles";
import { momentText } from "../../workbook/share/moments";
import { DATE_FORMAT } from "../../workbook/sheets/parts/table-sheet";

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const DAY = /^\d{4}-\d{2}-\d{2}$/;
const AS_TEXT = "@";

/** A constant as it is shown for typing over: a day or a time in the notation of ISO 8601, all else as it is. */
export function typedForm(value: unknown, format: string | undefined): string {
  const moment = typeof value === "number" && format !== undefined ? momentOf(format) : undefined;
  const text = moment === undefined ? undefined : momentText(value as number, moment, false);
  return text ?? String(value ?? "");
}

/** What an entry comes to, and the number format that goes with it where the cell has none for it. */
export interface Entry {
  readonly value: number | string;
  readonly format?: string;
}

/**
 * Reads what was typed into a cell. A day counts as one where the cell shows days, and anywhere in the order of
 * ISO 8601.
 */
export function readEntry(text: string, format: string | undefined): Entry {
  const trimmed = text.trim();
  if (format === AS_TEXT) return { value: text };
  if (NUMBER.test(trimmed)) return { value: Number(trimmed) };
  const showsDays = format !== undefined && momentOf(format) !== undefined;
  const isDay = DAY.test(trimmed) || (showsDays && !trimmed.includes(":"));
  const day = isDay && trimmed !== "" ? attemptOr(undefined, () => readDay(trimmed)) : undefined;
  if (day === undefined) return { value: text };
  return showsDays ? { value: day } : { value: day, format: DATE_FORMAT };
}
