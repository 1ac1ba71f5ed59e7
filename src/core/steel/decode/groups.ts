import table from "../../../data/steel/decode-en-groups.json";
import { records, text } from "../../table";

const GROUPS = records(table, { from: text, to: text, family: text });

/** Family of an EN number by its two-digit group; empty where the group is not held. */
export function groupFamily(group: string): string {
  return GROUPS.find(({ from, to }) => group >= from && group <= to)?.family ?? "";
}
