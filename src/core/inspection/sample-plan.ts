import letters from "../../data/inspection/sample-letters.json";
import plans from "../../data/inspection/sample-plans.json";
import { numberText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import { checkRange, relation } from "../relation";
import { number, text } from "../table";
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

/**
 * Finds an inspection level by its word.
 *
 * @throws NotAvailable naming the levels that fit.
 */
export const findLevel = wordFinder(INSPECTION_LEVELS, {
  noun: "inspection level",
  listedBy: "the help of SAMPLE_PLAN",
});

export interface SamplePlan {
  /** Code letter of the plan that applies. */
  readonly letter: string;
  /** Pieces to test [-]. */
  readonly sample: number;
  /** Most bad pieces with which the lot is accepted [-]. */
  readonly accept: number;
  /** Fewest bad pieces with which it is rejected [-]. */
  readonly reject: number;
}

/** AQL of the columns [%], as printed. */
const qualities = plans.columns.slice(2).map(([label]) => Number(label));

/** One row a letter; a cell is an acceptance number, or an arrow down (v) or up (^) to the plan that applies. */
const printedPlans = plans.rows.map(([letter, sample, ...cells]) => ({
  letter: text(letter),
  sample: number(sample),
  cells,
}));

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
  let index = printedPlans.findIndex((plan) => plan.letter === letter);
  for (let step = 0; step < printedPlans.length; step += 1) {
    const plan = printedPlans[index];
    const cell = plan?.cells[column];
    if (plan !== undefined && typeof cell === "number") {
      return { letter: plan.letter, sample: plan.sample, accept: cell, reject: cell + 1 };
    }
    index += cell === "^" ? -1 : 1;
  }
  throw new Error(`the sampling table leads nowhere from letter ${letter}`);
}

/**
 * How many pieces of a lot to test, and how many bad ones to allow.
 *
 * @param lot - Pieces in the lot, 2 to 1200.
 * @param aql - Acceptance quality limit, one of the printed ones [%]
 * @param level - Inspection level.
 * @returns Letter of the plan that applies and its numbers; the sample is the whole lot where it reaches it.
 * @throws NotAvailable outside the table.
 * Error and source: {@link SAMPLING}.
 */
export function samplePlan(lot: number, aql: number, level: Worded): SamplePlan {
  checkRange(SAMPLING, "lot", lot);
  const column = qualityColumn(aql);
  const position = 2 + INSPECTION_LEVELS.indexOf(level);
  const row = letters.rows.find(([from, to]) => lot >= Number(from) && lot <= Number(to)) ?? [];
  const plan = follow(String(row[position]), column);
  return { ...plan, sample: Math.min(plan.sample, lot) };
}
