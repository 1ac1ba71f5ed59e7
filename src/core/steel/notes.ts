import table from "../../data/steel/grade-notes.json";
import { records, text } from "../table";
import type { Grade } from "./steel";

let loaded: ReadonlyMap<string, string> | undefined;

/** What is worth knowing about a grade beyond its limits: disagreements and warnings; empty where there are none. */
export function noteOf({ designation }: Grade): string {
  loaded ??= new Map(records(table, { name: text, note: text }).map(({ name, note }) => [name, note]));
  return loaded.get(designation) ?? loaded.get(`${designation} (regular C)`) ?? "";
}
