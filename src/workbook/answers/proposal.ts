import { momentText } from "../share/moments";

/** A cell of the plan that would hold something else. */
export interface PlanChange {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly value: number | string;
  /** What stands there now, in words; empty where nothing does. */
  readonly before: string;
  /** Whether the cell holds a day, which lists show as one. */
  readonly isDay?: boolean;
  /** Whether it only says whose row it is: written with every answer of a new row, told with none. */
  readonly isName?: boolean;
}

/**
 * What there is to say of an answer: `fine`; `doubtful`, taken only where it is named; `refused`, never taken; `same`,
 * which the plan holds already; `taken`, which was brought in before.
 */
export type AnswerState = "fine" | "doubtful" | "refused" | "same" | "taken";

/** One answer, what it would change, and what there is to say of it. */
export interface Proposal {
  readonly number: number;
  readonly copy: string;
  /** Name of the table. */
  readonly paper: string;
  readonly from: string;
  /** Day of the answer, in the order of ISO 8601; empty where none is given. */
  readonly on: string;
  readonly file: string;
  readonly line: string;
  readonly asked: string;
  /** As it was written. */
  readonly given: string;
  readonly readAs: string;
  readonly unit: string;
  readonly changes: readonly PlanChange[];
  /** Whether the plan's cell holds the answer already, so that only the log gets a line. */
  readonly isHeld?: boolean;
  readonly state: AnswerState;
  /** A sentence for each doubt. */
  readonly why: readonly string[];
}

/** A proposal while it is made. */
export type Draft = Omit<Proposal, "number" | "state" | "why" | "changes" | "isHeld"> & {
  changes: PlanChange[];
  isHeld?: boolean;
  doubts: string[];
  refusal?: string;
};

/** Whether an answer may be brought in at all. */
export const canBeTaken = ({ state }: Proposal): boolean => state === "fine" || state === "doubtful";

const asDay = (value: number | string): string => momentText(Number(value), "date", false) ?? String(value);

/** What a cell holds now, as lists show it. */
export const valueBefore = ({ before, isDay }: PlanChange): string => {
  if (before === "") return "empty";
  return isDay === true && Number.isFinite(Number(before)) ? asDay(before) : before;
};

/** What a cell would hold, as lists show it. */
export const valueAfter = ({ value, isDay }: PlanChange): string =>
  isDay === true ? asDay(value) : String(value);
