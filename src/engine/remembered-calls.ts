import { Refusal } from "../core/refusal";
import type { Cells } from "../functions/cells";

/** Longest text of arguments that a call is remembered by: cells of a run's table, not whole columns. */
const MAX_KEY = 20_000;
/** Letters of arguments, and cells of answers, that are kept of one function before all of them are forgotten. */
const MAX_KEPT = 2_000_000;

/** Arguments as one text that is the same only for the same values; nothing for those that are too many. */
function keyOf(given: readonly unknown[]): string | undefined {
  let [key, isLong] = ["", false];
  const add = (value: unknown): void => {
    if (isLong) return;
    if (Array.isArray(value)) {
      key += "[";
      value.forEach(add);
      key += "]";
    } else key += partOf(value);
    isLong = key.length > MAX_KEY;
  };
  given.forEach(add);
  return isLong ? undefined : key;
}

function partOf(value: unknown): string {
  if (typeof value === "number") return `${value};`;
  if (value instanceof Refusal) return `${value.code}${JSON.stringify(value.message)}`;
  return JSON.stringify(value) ?? "null";
}

/**
 * Answers of one function, by the values it was given. Our functions know no clock and no chance, so a question that
 * was asked before has its answer: the sheets of a plan ask for one treatment in a dozen columns.
 */
export class RememberedCalls {
  private readonly answers = new Map<string, Cells>();
  private kept = 0;

  /** @param work - Works out an answer that is not known. */
  answer(given: readonly unknown[], work: () => Cells): Cells {
    const key = keyOf(given);
    if (key === undefined) return work();
    const known = this.answers.get(key);
    if (known !== undefined) return known;
    const made = work();
    this.keep(key, made);
    return made;
  }

  private keep(key: string, made: Cells): void {
    const weight = key.length + made.length * (made[0]?.length ?? 0);
    if (weight > MAX_KEPT) return;
    if (this.kept + weight > MAX_KEPT) this.forget();
    this.kept += weight;
    this.answers.set(key, made);
  }

  private forget(): void {
    this.answers.clear();
    this.kept = 0;
  }
}
