import { cellName } from "../../formula/addresses";
import type { Collected } from "./collect";
import { type AnswerState, type Proposal, valueAfter, valueBefore } from "./proposal";
import { keptWords, toldChanges } from "./take";

/** Where an answer goes and what it replaces. */
function changesIn(proposal: Proposal): string {
  const changes = toldChanges(proposal);
  if (changes.length === 0) return keptWords(proposal);
  return changes
    .map((change) => {
      const { sheet, row, column } = change;
      return `${sheet}!${cellName(row, column)} from ${valueBefore(change)} to ${valueAfter(change)}`;
    })
    .join(", ");
}

/** An answer as lists show it, without its number. */
export function proposalWords(proposal: Proposal): string {
  const { line, asked, given, readAs, unit, why, state } = proposal;
  const read = readAs === "" || readAs === given ? "" : ` read as ${readAs}`;
  const shown = `${line} ${asked}: ${given}${read}${unit === "" ? "" : ` ${unit}`}`;
  const goes = state === "fine" || state === "doubtful" ? `; ${changesIn(proposal)}` : "";
  const doubts = why.length === 0 ? "" : `; ${why.join("; ")}`;
  // What there is to know of an answer comes before the place that it goes to.
  return `${shown}${doubts}${goes}`;
}

export const STATE_WORDS: Readonly<Record<AnswerState, string>> = {
  fine: "fine",
  doubtful: "doubtful",
  refused: "refused",
  same: "twice",
  taken: "taken",
};

/** Counts of what came back, in one line. */
export function countWords({ proposals, open, answered }: Collected): string {
  const count = (state: AnswerState) => proposals.filter((proposal) => proposal.state === state).length;
  return `Cells out ${open}, answered ${answered}; answers fine ${count("fine")}, doubtful ${count("doubtful")}, refused ${count("refused")}, twice ${count("same")}, taken before ${count("taken")}`;
}
