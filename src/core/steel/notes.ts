import table from "../../data/steel/grade-notes.json";
import type { Grade } from "./steel";

let loaded: ReadonlyMap<string, string> | undefined;

/** What is worth knowing about a grade beyond its limits: disagreements and warnings; empty where there are none. */
export function noteOf({ designation }: Grade): string {
  loaded ??= new Map(table.rows.map(([name = "", note = ""]) => [name, note]));
  return loaded.get(designation) ?? loaded.get(`${designation} (regular C)`) ?? "";
}
