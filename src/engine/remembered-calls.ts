import { Refusal } from "../core/refusal";
import type { Cells } from "../functions/cells";

/** Longest text that a table of arguments is known by: a run's table, not whole columns. */
const MAX_KEY = 200_000;
/** Letters of arguments, and cells of answers, that are kept before all of them are forgotten. */
const MAX_KEPT = 2_000_000;

/** A text that no other one is taken for, whatever follows it. */
const closed = (text: string): string => `${text.length}:${text}`;

function keyOfValue(value: unknown): string {
  if (typeof value === "number") return `${value};`;
  if (typeof value === "string") return `"${closed(value)}`;
  if (value instanceof Refusal) return `!${value.code}${closed(value.message)}`;
  return closed(JSON.stringify(value) ?? "undefined");
}

function keyOfRow(row: unknown): string {
  if (!Array.isArray(row)) return `${keyOfValue(row)},`;
  let key = "";
  for (const value of row) key += Array.isArray(value) ? closed(JSON.stringify(value)) : keyOfValue(value);
  return `${key}]`;
}

/** The values of a table as one text that is the same only for the same values; nothing for one that is too large. */
function keyOfTable(rows: readonly unknown[]): string | undefined {
  let key = "[";
  for (const row of rows) {
    key += keyOfRow(row);
    if (key.length > MAX_KEY) return undefined;
  }
  return key;
}

/**
 * Tables that calls were given, each with a short name: formulas that ask about one range hand over the very same
 * table, and need not write all of it out to find that it was asked about before.
 */
class KnownTables {
  private readonly names = new WeakMap<readonly unknown[], string | undefined>();
  private readonly numbers = new Map<string, number>();
  private given = 0;
  private kept = 0;

  nameOf(rows: readonly unknown[]): string | undefined {
    if (this.names.has(rows)) return this.names.get(rows);
    const name = this.named(keyOfTable(rows));
    this.names.set(rows, name);
    return name;
  }

  private named(key: string | undefined): string | undefined {
    if (key === undefined) return undefined;
    const known = this.numbers.get(key);
    if (known !== undefined) return `#${known};`;
    if (this.kept + key.length > MAX_KEPT) this.forget();
    this.kept += key.length;
    // A number is never given twice: answers may still be kept by one whose table is forgotten.
    this.given += 1;
    this.numbers.set(key, this.given);
    return `#${this.given};`;
  }

  private forget(): void {
    this.numbers.clear();
    this.kept = 0;
  }
}

const tables = new KnownTables();

/** Arguments as one text that is the same only for the same values; nothing for those that are too many. */
function keyOf(given: readonly unknown[]): string | undefined {
  let key = "";
  for (const value of given) {
    const part = Array.isArray(value) ? tables.nameOf(value) : keyOfValue(value);
    if (part === undefined) return undefined;
    key += part;
  }
  return key;
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
