/** Digits and letters that nobody mistakes for another: no I, L, O, U. */
const LETTERS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
/** Figures of a number that say the plan, and figures that say the copy. */
const PART = 4;

async function shortHash(text: string): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return [...new Uint8Array(digest)]
    .slice(0, PART)
    .map((byte) => LETTERS[byte % LETTERS.length])
    .join("");
}

/** What tells one plan from another: its run and its forge. */
export interface PlanName {
  readonly run: string;
  readonly forge: string;
}

/** A plan as a sentence names it. */
export function planWords({ run, forge }: PlanName): string {
  const named = run === "" ? "a run without a name" : run;
  return forge === "" ? named : `${named} of ${forge}`;
}

/** The first figures of the numbers of all copies of a plan. */
export const planNumber = ({ run, forge }: PlanName): Promise<string> =>
  shortHash(`plan\n${run.trim().toLowerCase()}\n${forge.trim().toLowerCase()}`);

/**
 * The number of a copy: the same copy made again has the same, any other one another.
 *
 * @param contents - All that is in the copy, in words.
 */
export async function copyNumber(plan: PlanName, contents: string): Promise<string> {
  return (await planNumber(plan)) + (await shortHash(`copy\n${contents}`));
}

/** The key of a row: mark of the form, number of the copy, and the line in the words of the plan. */
export const rowKey = (mark: string, number: string, line: string): string => `${mark}-${number}/${line}`;

/** A key taken apart. */
export interface RowKey {
  readonly mark: string;
  readonly number: string;
  /** The first figures of the number: which plan. */
  readonly plan: string;
  readonly line: string;
}

const KEY = new RegExp(`^([A-Z])-([${LETTERS}]{${2 * PART}})/(.{1,120})$`, "i");

/** Reads a key; `undefined` where a text is none. */
export function readRowKey(text: string): RowKey | undefined {
  const [, mark, number, line] = KEY.exec(text.trim()) ?? [];
  if (mark === undefined || number === undefined || line === undefined) return undefined;
  const upper = number.toUpperCase();
  return { mark: mark.toUpperCase(), number: upper, plan: upper.slice(0, PART), line: line.trim() };
}
