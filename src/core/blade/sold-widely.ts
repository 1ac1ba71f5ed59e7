import table from "../../data/blade/sold-widely.json";
import type { Steel } from "../steel/steel";
import { records, text } from "../table";

const LISTED: ReadonlySet<string> = new Set(records(table, { steel: text }).map(({ steel }) => steel));

/**
 * Whether a steel is sold widely for blades under its own name.
 *
 * @param steel - A grade.
 * Limits: a steel that is not listed may still be had. Error: none is stated. Source: common practice, no source.
 */
export function isSoldWidely({ name }: Steel): boolean {
  return LISTED.has(name);
}
