import { nameIndex } from "./names";
import { tidy, tightKey } from "./normalize-name";
import { splitPrefix } from "./prefix";
import { bySound } from "./script";
import type { Grade } from "./steel";

/** Edits that still count as a slip: half of the name, at most three. */
function allowance(name: string): number {
  return Math.min(3, Math.ceil(name.length / 2));
}

function cost(a: string, b: string): number {
  if (a === b) return 0;
  // The letter O for a zero, and the reverse, is the commonest slip: O1, D2, 1O95.
  return (a === "O" && b === "0") || (a === "0" && b === "O") ? 0.1 : 1;
}

/** Edit distance of two folded names, O and 0 counting as nearly the same; infinite once it passes the limit. */
export function editDistance(a: string, b: string, limit = Number.POSITIVE_INFINITY): number {
  let previous = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let row = 1; row <= a.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= b.length; column += 1) {
      const replaced = (previous[column - 1] ?? 0) + cost(a.charAt(row - 1), b.charAt(column - 1));
      current.push(Math.min(replaced, (previous[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1));
    }
    if (Math.min(...current) > limit) return Number.POSITIVE_INFINITY;
    previous = current;
  }
  return previous[b.length] ?? 0;
}

function sharedStart(a: string, b: string): number {
  let count = 0;
  while (count < a.length && a.charAt(count) === b.charAt(count)) count += 1;
  return count;
}

function firstNumber(name: string): number {
  return Number(/\d+/.exec(name)?.[0] ?? 0);
}

/** Too little carbon for a blade, or no steel that a quench hardens [mass %]. */
const MIN_BLADE_CARBON = 0.3;

function isSoft({ family, limits }: Grade): boolean {
  const most = limits.C?.high;
  const hardens = family !== "austenitic stainless" && family !== "ferritic stainless";
  return (
    !hardens ||
    (family !== "martensitic stainless" && most !== null && most !== undefined && most < MIN_BLADE_CARBON)
  );
}

interface Candidate {
  /** A steel for no blade, named after every steel that is for one. */
  readonly isSoft: boolean;
  readonly designation: string;
  readonly distance: number;
  readonly start: number;
  readonly gap: number;
}

function compare(a: Candidate, b: Candidate): number {
  return Number(a.isSoft) - Number(b.isSoft) || a.distance - b.distance || b.start - a.start || a.gap - b.gap;
}

const EN_NUMBER = /^1-\d{2,4}$/;
const UNS_NUMBER = /^[A-Z]\d{5}$/;

/** A number of a register is compared with numbers of that register only: 1094 is not a slip for 1.0904. */
function comparable(given: string, name: string): boolean {
  return EN_NUMBER.test(given) === EN_NUMBER.test(name) && UNS_NUMBER.test(given) === UNS_NUMBER.test(name);
}

function candidate(given: string, name: string, grade: Grade): Candidate | undefined {
  const limit = allowance(given);
  if (Math.abs(name.length - given.length) > limit || !comparable(given, name)) return undefined;
  const distance = editDistance(given, name, limit);
  if (distance > limit) return undefined;
  const gap = Math.abs(firstNumber(given) - firstNumber(name));
  return {
    designation: labelOf(grade, name),
    isSoft: isSoft(grade),
    distance,
    start: sharedStart(given, name),
    gap,
  };
}

/** Where a number was mistyped, the number that is near is shown with the name. */
function labelOf({ designation, enNumber, uns }: Grade, name: string): string {
  if (EN_NUMBER.test(name)) return `${enNumber} ${designation}`;
  return UNS_NUMBER.test(name) ? `${uns} ${designation}` : designation;
}

function candidatesFor(given: string): Candidate[] {
  const best = new Map<string, Candidate>();
  for (const [name, [grade]] of nameIndex()) {
    const found = grade && candidate(given, name, grade);
    if (found === undefined) continue;
    const known = best.get(found.designation);
    if (known === undefined || compare(found, known) < 0) best.set(found.designation, found);
  }
  return [...best.values()];
}

/**
 * Designations that a mistyped name may have meant, best first.
 *
 * @param name - What was typed.
 * @param count - How many to give at most.
 * @returns Designations of the table, after the EN or UNS number where one was typed; none where nothing is close.
 */
export function nearestDesignations(name: string, count = 3): string[] {
  const tidied = tidy(name);
  const given = tightKey(bySound(splitPrefix(tidied)?.rest ?? tidied));
  return candidatesFor(given)
    .sort(compare)
    .slice(0, count)
    .map(({ designation }) => designation);
}
