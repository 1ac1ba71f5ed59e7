import table from "../../../data/steel/decode-en-groups.json";

/** Family of an EN number by its two-digit group; empty where the group is not held. */
export function groupFamily(group: string): string {
  const row = (table.rows as [string, string, string][]).find(([from, to]) => group >= from && group <= to);
  return row?.[2] ?? "";
}
