import table from "../../data/steel/nicknames.json";
import { records, text } from "../table";

const often = new Map(records(table, { name: text, often: text }).map((row) => [row.name, row.often]));

/** The standard grades that a name of the trade often stands for; `undefined` where it is none of them. */
export function nickname(name: string): string | undefined {
  const folded = name
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, " ");
  return often.get(folded) ?? often.get(folded.replace(/s$/, ""));
}
