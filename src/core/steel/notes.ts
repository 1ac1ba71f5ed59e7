import table from "../../data/steel/grade-notes.json";
import type { SourceKey } from "../sources";
import type { Grade } from "./steel";

/** What is worth knowing about a grade beyond its limits. */
export interface GradeNotes {
  /** Near, never the same steel; as the sources pair them. */
  readonly nearEquivalents: readonly string[];
  readonly note: string;
  /** Further texts that carry the grade. */
  readonly otherSources: readonly SourceKey[];
}

const NONE: GradeNotes = { nearEquivalents: [], note: "", otherSources: [] };

let loaded: ReadonlyMap<string, GradeNotes> | undefined;

function notesFrom(row: readonly string[]): [string, GradeNotes] {
  const [designation = "", near = "", note = "", sources = ""] = row;
  const split = (text: string, separator: string) => (text === "" ? [] : text.split(separator));
  const otherSources = split(sources, " ") as SourceKey[];
  return [designation, { nearEquivalents: split(near, "; "), note, otherSources }];
}

/** Notes, near equivalents and further sources of a grade. */
export function notesOf({ designation }: Grade): GradeNotes {
  loaded ??= new Map(table.rows.map(notesFrom));
  return loaded.get(designation) ?? loaded.get(`${designation} (regular C)`) ?? NONE;
}
