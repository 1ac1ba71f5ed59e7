import type { ExampleArgument } from "../../functions/declare";

/** An argument of a worked case as it is typed into a field: cells of a list one a line, or where a field is one line, parted. */
export function entryOf(given: ExampleArgument | undefined, isOneLine: boolean): string {
  if (given === null || given === undefined) return "";
  if (!Array.isArray(given)) return String(given);
  const rows: readonly unknown[] = given;
  const texts = rows.map((row) => (Array.isArray(row) ? row.join("\t") : String(row ?? "")));
  return texts.join(isOneLine ? "; " : "\n");
}
