import table from "../../data/steel/grade-kin.json";
import type { SourceKey } from "../sources";
import type { Grade } from "./steel";

/** Who else carries a grade, and which grades the sources put beside it. No function reads it. */
export interface GradeKin {
  /** Near, never the same steel; as the sources pair them. */
  readonly nearEquivalents: readonly string[];
  /** Further texts that carry the grade. */
  readonly otherSources: readonly SourceKey[];
}

const split = (text: string, separator: string) => (text === "" ? [] : text.split(separator));

/** Near equivalents and further sources of a grade. */
export function kinOf({ designation }: Grade): GradeKin {
  const row = table.rows.find(([name]) => name === designation || name === `${designation} (regular C)`);
  const [, near = "", sources = ""] = row ?? [];
  return { nearEquivalents: split(near, "; "), otherSources: split(sources, " ") as SourceKey[] };
}
