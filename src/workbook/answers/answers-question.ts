import { alteredLines } from "./altered";
import type { AnswerSource } from "./answer-file";
import { collect } from "./collect";
import { canBeTaken } from "./proposal";
import { takeAnswers } from "./take";
import { countWords, proposalWords, STATE_WORDS } from "./told";

/** An answer as a list shows it. */
export interface AnswerEntry {
  readonly number: number;
  /** What there is to say of it: fine, doubtful, refused, twice, taken. */
  readonly state: string;
  readonly words: string;
  readonly canBeTaken: boolean;
  /** Whether it is to be taken unless somebody thinks better of it. */
  readonly isFine: boolean;
}

/** What came back, to be looked at before anything is taken. */
export interface AnswersQuestion {
  readonly entries: readonly AnswerEntry[];
  readonly remarks: readonly string[];
  /** Counts of cells and answers, in one line. */
  readonly counts: string;
  /**
   * The plan with these answers in it.
   *
   * @param date - As it is to stand in the log.
   * @throws FileRefusal where one of them cannot be taken.
   */
  take(numbers: readonly number[], date: string): Promise<Uint8Array>;
}

/** @throws FileRefusal where the plan cannot be read or is no planning workbook. */
export async function answersQuestion(
  plan: Uint8Array,
  sources: readonly AnswerSource[],
): Promise<AnswersQuestion> {
  const found = await collect(plan, sources);
  return {
    entries: found.proposals.map((proposal) => ({
      number: proposal.number,
      state: STATE_WORDS[proposal.state],
      words: proposalWords(proposal),
      canBeTaken: canBeTaken(proposal),
      isFine: proposal.state === "fine",
    })),
    remarks: [...found.remarks, ...found.altered.flatMap(alteredLines)],
    counts: countWords(found),
    take: (numbers, date) =>
      takeAnswers(
        plan,
        found.proposals.filter(({ number }) => numbers.includes(number)),
        date,
      ),
  };
}
