import { FIRST_ROW } from "../sheets/parts/table-sheet";
import type { Plan } from "./lines-asked";
import type { Proposal } from "./proposal";

/** Name of the plan's sheet that remembers who answered what, and when it was taken. */
export const LOG_SHEET = "Answers";

/** Its headings, in the row in which every table of the plan has them. */
export const LOG_HEADINGS = [
  "Copy",
  "Paper",
  "From",
  "Date",
  "Line",
  "Asked",
  "Answer",
  "Read as",
  "Unit",
  "Went to",
  "Before",
  "Taken on",
  "File",
] as const;

type Logged = Pick<Proposal, "copy" | "paper" | "line" | "asked">;

/** What tells one question of one copy from all others. */
export const logKey = ({ copy, paper, line, asked }: Logged): string => [copy, paper, line, asked].join("|");

/** An answer that was taken. */
export interface TakenBefore {
  readonly readAs: string;
  readonly on: string;
}

const wordsIn = (value: unknown) => (value === undefined ? "" : String(value));

/** What the plan's log says was taken; the last of several answers to a question counts. */
export function takenBefore({ sheets }: Plan): Map<string, TakenBefore> {
  const sheet = sheets.get(LOG_SHEET);
  const rows = sheet?.rowsWith("Copy") ?? [];
  return new Map(
    rows.map((row) => {
      const at = (heading: (typeof LOG_HEADINGS)[number]) => wordsIn(sheet?.under(heading, row).value);
      const key = logKey({ copy: at("Copy"), paper: at("Paper"), line: at("Line"), asked: at("Asked") });
      return [key, { readAs: at("Read as"), on: at("Taken on") }] as const;
    }),
  );
}

/** The first row of the log that is free. */
export function firstFreeRow({ sheets }: Plan): number {
  const rows = sheets.get(LOG_SHEET)?.rowsWith("Copy") ?? [];
  return (rows.at(-1) ?? FIRST_ROW - 1) + 1;
}
