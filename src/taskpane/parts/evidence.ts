import { ask, cellText } from "./ask";
import { element } from "./dom";
import { disclosure, facts } from "./tables";

const LABELS = ["Relation", "Source", "Range", "Expected error", "Kind of evidence", "Composition used"];

export interface EvidenceOf {
  readonly functionName: string;
  /** Left out: for all steels. */
  readonly steel?: string;
  /** Left out: every relation; else those whose text begins so. */
  readonly relation?: string;
}

/** Where the answers of a function come from, closed until asked for. */
export function evidenceOf(asked: EvidenceOf, summary: string): HTMLElement {
  return disclosure(summary, () => relations(asked));
}

function relations({ functionName, steel, relation = "" }: EvidenceOf): HTMLElement[] {
  const { rows, refusal } = ask("EVIDENCE", functionName, steel ?? null);
  if (refusal !== null) return [element("p", {}, refusal)];
  const texts = rows.map((row) => row.map(cellText));
  const fitting = texts.filter(([title = ""]) => title.startsWith(relation));
  return fitting.map((row) => {
    const pairs = LABELS.map((label, at): [string, string] => [label, row[at] ?? ""]);
    return facts(pairs, true);
  });
}
