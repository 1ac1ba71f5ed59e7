import { ask, cellText } from "./ask";
import { element } from "./dom";
import { disclosure, facts } from "./tables";

const LABELS = ["Relation", "Source", "Range", "Expected error", "Kind of evidence", "Composition used"];

/** Where the answers of a function come from, for one steel or for all, closed until asked for. */
export function evidenceOf(functionName: string, steel: string | null, summary: string): HTMLElement {
  const { rows, refusal } = ask("EVIDENCE", functionName, steel);
  if (refusal !== null) return disclosure(summary, element("p", {}, refusal));
  const relations = rows.map((row) => facts(LABELS.map((label, at) => [label, cellText(row[at] ?? null)])));
  return disclosure(summary, ...relations);
}
