import { ask, cellText } from "./ask";
import { element } from "./dom";
import { disclosure, facts } from "./tables";

const LABELS = ["Relation", "Source", "Range", "Expected error", "Kind of evidence", "Composition used"];

/** Where the answers of a function come from, for one steel or for all, closed until asked for. */
export function evidenceOf(functionName: string, steel: string | null, summary: string): HTMLElement {
  return disclosure(summary, () => relations(functionName, steel));
}

function relations(functionName: string, steel: string | null): HTMLElement[] {
  const { rows, refusal } = ask("EVIDENCE", functionName, steel);
  if (refusal !== null) return [element("p", {}, refusal)];
  const named = (row: (typeof rows)[number]) =>
    LABELS.map((label, at): [string, string] => [label, cellText(row[at] ?? null)]);
  return rows.map((row) => facts(named(row), true));
}
