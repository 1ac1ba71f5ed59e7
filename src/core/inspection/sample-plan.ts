import letters from "../../data/inspection/sample-letters.json";
import plans from "../../data/inspection/sample-plans.json";
import { numberText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import { checkRange, relation } from "../relation";
import { type Worded, wordFinder } from "../word-list";

/** Single sampling for normal inspection. */
export const SAMPLING = relation({
  title: "Single sampling by attributes, normal inspection",
  source: "mil-std-105e",
  locator: "tables I and II-A, letters A to K",
  evidence: "standard",
  inputs: { lot: { label: "lot", unit: "pieces", min: 2, max: 1200 } },
  output: { label: "sample", unit: "pieces" },
  error: { size: null, unit: "pieces", kind: "exact table; ACCEPT_CHANCE shows what a plan lets through" },
  note: "Letter A points down at AQL 10, where the reprint points up to nothing: corrected from memory.",
});

/** How sharply to look: I, II and III, and the special levels for small samples. */
export const INSPECTION_LEVELS: readonly Worded[] = letters.columns
  .slice(2)
  .map(([word = ""]) => ({ word, aliases: word.startsWith("S") ? [word.replace("-", "")] : [`G-${word}`] }));

export const findLevel = wordFinder(INSPECTION_LEVELS, {
  noun: "inspection level",
  listedBy: "the help of SAMPLE_PLAN",
});

export interface SamplePlan {
  readonly letter: string;
  readonly sample: number;
  readonly accept: number;
  readonly reject: number;
}

type PlanRow = readonly [letter: string, sample: number, ...accept: (number | string)[]];

const planRows = plans.rows as unknown as readonly PlanRow[];
const qualities = plans.columns.slice(2).map(([label]) => Number(label));

function qualityColumn(aql: number): number {
  const column = qualities.indexOf(aql);
  if (column >= 0) return column;
  const nearest = [...qualities].sort((a, b) => Math.abs(a - aql) - Math.abs(b - aql))[0] as number;
  throw new NotAvailable(
    `AQL ${numberText(aql)} is not a column of the sampling table: use ${numberText(nearest)}, the nearest of ${qualities.join(", ")}`,
  );
}

/** Follows the arrows down or up the column to the plan that applies. */
function follow(letter: string, column: number): SamplePlan {
  let index = planRows.findIndex(([name]) => name === letter);
  for (let step = 0; step < planRows.length; step += 1) {
    const row = planRows[index];
    const cell = row?.[column + 2];
    if (row !== undefined && typeof cell === "number") {
      return { letter: row[0], sample: row[1], accept: cell, reject: cell + 1 };
    }
    index += cell === "^" ? -1 : 1;
  }
  throw new Error(`the sampling table leads nowhere from letter ${letter}`);
}

/**
 * How many pieces of a lot to test, and how many bad ones to allow.
 *
 * @param lot - Pieces in the lot, 2 to 1200.
 * @param aql - Acceptance quality limit in %, one of the printed ones.
 * @param level - Inspection level.
 * @returns Letter of the plan that applies and its numbers; the sample is the whole lot where it reaches it.
 * @throws NotAvailable outside the table.
 */
export function samplePlan(lot: number, aql: number, level: Worded): SamplePlan {
  checkRange(SAMPLING, "lot", lot);
  const column = qualityColumn(aql);
  const position = 2 + INSPECTION_LEVELS.indexOf(level);
  const row = letters.rows.find(([from, to]) => lot >= Number(from) && lot <= Number(to)) ?? [];
  const plan = follow(String(row[position]), column);
  return { ...plan, sample: Math.min(plan.sample, lot) };
}
