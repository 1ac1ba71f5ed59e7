import { COMPUTED_BY, LABELS, PROVENANCE } from "../provenance";
import { digestOf, plainContent, type Values } from "../values";

/** What a copy says of itself, set against what it holds. */
export interface Statements {
  /** What computed the copy; `undefined` where it does not say. */
  readonly computedBy: string | undefined;
  /** True where that is the very version and data edition that verifies it. */
  readonly isThisVersion: boolean;
  readonly date: string | undefined;
  /** How many sheets of the workbook the sender left out of the copy. */
  readonly leftOut: number;
  /** Whether the values still have the SHA-256 that the copy was made with. */
  readonly digest: "as stated" | "not as stated" | "not stated";
}

/** Reads the Provenance sheet of a copy and checks the SHA-256 of its values. */
export async function statementsOf(shared: Values): Promise<Statements> {
  const cells = shared.get(PROVENANCE) ?? new Map<string, never>();
  const beside = (label: string): string | undefined => {
    const found = [...cells].find(([cell, content]) => /^A\d/.test(cell) && plainContent(content) === label);
    const value = found && cells.get(`B${found[0].slice(1)}`);
    return value && plainContent(value);
  };
  const computedBy = beside(LABELS.computedBy);
  const digest = beside(LABELS.digest);
  const isAsStated = digest === (await digestOf(shared, PROVENANCE));
  return {
    computedBy,
    isThisVersion: computedBy === COMPUTED_BY,
    date: beside(LABELS.date),
    leftOut: Number(beside(LABELS.leftOut) ?? 0),
    digest: digest === undefined ? "not stated" : isAsStated ? "as stated" : "not as stated",
  };
}
