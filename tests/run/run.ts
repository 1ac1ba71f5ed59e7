import { RUN_PLAN, RUN_TOTALS } from "../../src/functions/run";
import { answer } from "../stock/call";

export type Line = Readonly<Record<string, unknown>>;

/** The lines as a table: every heading that any of them has, in the order of first use. */
export function tableOf(lines: readonly Line[]): unknown[][] {
  const headings = [...new Set(lines.flatMap((line) => Object.keys(line)))];
  return [headings, ...lines.map((line) => headings.map((heading) => line[heading] ?? null))];
}

/** The answer by heading, one record a line; refusals are written as "code sentence". */
export function plan(lines: readonly Line[], date?: unknown): Record<string, unknown>[] {
  const [headings = [], ...rows] = answer(RUN_PLAN, tableOf(lines), date);
  return rows.map((row) => Object.fromEntries(headings.map((heading, at) => [String(heading), row[at]])));
}

/** The rows of RUN_TOTALS by their name. */
export function totals(lines: readonly Line[], ...rest: unknown[]): Map<unknown, unknown[]> {
  return new Map(answer(RUN_TOTALS, tableOf(lines), ...rest).map((row) => [row[0], row]));
}
