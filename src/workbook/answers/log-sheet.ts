import { LOG_HEADINGS, type LogKey } from "../sheets/answers-sheet";
import { FIRST_ROW } from "../sheets/parts/table-sheet";
import { LOG_SHEET } from "../sheets/sheets-of-the-plan";
import type { Plan } from "./lines-asked";
import type { Proposal } from "./proposal";

type Logged = Pick<Proposal, "copy" | "paper" | "line" | "asked">;
type Answered = Logged & Pick<Proposal, "readAs" | "unit">;

/** What tells one question of one copy from all others. */
export const logKey = ({ copy, paper, line, asked }: Logged): string => [copy, paper, line, asked].join("|");

/** Bytes of the digest that the log keeps: 64 bits, so that no two answers of a plan share one. */
const DIGEST_BYTES = 8;

/** Tells an answer to one question of one copy from all others, whatever was answered before or since. */
export async function answerDigest(answer: Answered): Promise<string> {
  const { copy, paper, line, asked, readAs, unit } = answer;
  const text = JSON.stringify([copy, paper, line, asked, readAs, unit]);
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return [...new Uint8Array(digest)]
    .slice(0, DIGEST_BYTES)
    .map((byte) => byte.toString(16).padStart(2, "0"))
    .join("");
}

/** An answer that was taken. */
export interface TakenBefore {
  readonly readAs: string;
  readonly on: string;
  readonly digest: string;
}

const wordsIn = (value: unknown) => (value === undefined ? "" : String(value));

/** What the plan's log says was taken: by the question, the last of several answers; and by digest, every one. */
export class TakenAnswers {
  private readonly byQuestion: ReadonlyMap<string, TakenBefore>;
  private readonly byDigest: ReadonlyMap<string, TakenBefore>;

  constructor({ sheets }: Plan) {
    const sheet = sheets.get(LOG_SHEET);
    const rows = (sheet?.rowsWith(LOG_HEADINGS.copy) ?? []).map((row) => {
      const at = (key: LogKey) => wordsIn(sheet?.under(LOG_HEADINGS[key], row).value);
      const key = logKey({ copy: at("copy"), paper: at("paper"), line: at("line"), asked: at("asked") });
      return [key, { readAs: at("readAs"), on: at("takenOn"), digest: at("digest") }] as const;
    });
    this.byQuestion = new Map(rows);
    this.byDigest = new Map(rows.map(([, taken]) => [taken.digest, taken]));
  }

  /** The last answer to the same question. */
  before(answer: Logged): TakenBefore | undefined {
    return this.byQuestion.get(logKey(answer));
  }

  /** The same answer; logs of older plans keep no digest. */
  same(answer: Answered, digest: string): TakenBefore | undefined {
    const before = this.before(answer);
    const isSame = before?.digest === "" && before.readAs === answer.readAs;
    return this.byDigest.get(digest) ?? (isSame ? before : undefined);
  }
}

/** The first row of the log that is free. */
export function firstFreeRow({ sheets }: Plan): number {
  const rows = sheets.get(LOG_SHEET)?.rowsWith(LOG_HEADINGS.copy) ?? [];
  return (rows.at(-1) ?? FIRST_ROW - 1) + 1;
}
