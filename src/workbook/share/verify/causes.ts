import { calledNames, callsOurs } from "../../../formula/functions-called";
import { agree, type CellPair } from "./agreement";
import { type LiveSide, withCopyTypedIn } from "./live-side";
import { keepsFormula } from "./note-texts";
import type { Owner } from "./owners";

/**
 * Why a cell of a copy differs from the live workbook. `typed`: it is typed otherwise. `formula`: its formula is
 * another one than the copy's note keeps. `clock`: its formula asks for the time or for a random number. `stored`:
 * its formula is not calculated here. `version`: the copy was calculated by another version or data edition.
 * `follows`: with the values of the copy in those cells, it comes to what the copy says. `unexplained`: none of these.
 */
export type Cause = "typed" | "formula" | "clock" | "stored" | "version" | "follows" | "unexplained";

export interface Difference extends CellPair {
  readonly cause: Cause;
}

/** What is known beside the two values of a cell. */
export interface Circumstances {
  readonly live: LiveSide;
  readonly ownerOf: (sheet: string, cell: string) => Owner | undefined;
  readonly isOtherVersion: boolean;
  readonly tolerance: number;
}

const CLOCK = new Set(["NOW", "TODAY", "RAND", "RANDBETWEEN", "RANDARRAY"]);

/** A cause that lies in the cell itself; `undefined` where it may only follow from others. */
function ownCause(owner: Owner, isStored: boolean, isOtherVersion: boolean): Cause | undefined {
  const { formula, note } = owner;
  if (isStored) return "stored";
  if (note !== undefined && !keepsFormula(note, formula.typed)) return "formula";
  if (calledNames(formula.typed).some((name) => CLOCK.has(name))) return "clock";
  return isOtherVersion && callsOurs(formula.stored) ? "version" : undefined;
}

/** Splits cells into those that come to the copy's value once other cells hold what the copy says, and the rest. */
async function following(pairs: readonly CellPair[], roots: readonly CellPair[], around: Circumstances) {
  if (pairs.length === 0 || roots.length === 0) return { follow: [], rest: pairs };
  const { values } = await withCopyTypedIn(around.live, roots);
  const does = ({ sheet, cell, shared }: CellPair) =>
    agree(values.get(sheet)?.get(cell), shared, around.tolerance);
  return { follow: pairs.filter(does), rest: pairs.filter((pair) => !does(pair)) };
}

const as = (cause: Cause, pairs: readonly CellPair[]): Difference[] =>
  pairs.map((pair) => ({ ...pair, cause }));

function withOwnCause(pairs: readonly CellPair[], around: Circumstances): Difference[] {
  const stored = new Set(around.live.left.map(({ sheet, cell }) => `${sheet}!${cell}`));
  return pairs.flatMap((pair): Difference[] => {
    const owner = around.ownerOf(pair.sheet, pair.cell);
    const isStored = stored.has(`${pair.sheet}!${pair.cell}`);
    const cause = owner && ownCause(owner, isStored, around.isOtherVersion);
    return cause === undefined ? [] : [{ ...pair, cause }];
  });
}

/** Finds out why cells differ, by calculating the live workbook with the copy's values in the cells that differ first. */
export async function differencesWithCauses(
  pairs: readonly CellPair[],
  around: Circumstances,
): Promise<Difference[]> {
  const isTyped = ({ sheet, cell }: CellPair) => around.ownerOf(sheet, cell) === undefined;
  const typed = pairs.filter(isTyped);
  const worked = pairs.filter((pair) => !isTyped(pair));
  const first = await following(worked, typed, around);
  const own = withOwnCause(first.rest, around);
  const known = new Set(own.map(({ sheet, cell }) => `${sheet}!${cell}`));
  const open = first.rest.filter(({ sheet, cell }) => !known.has(`${sheet}!${cell}`));
  const second = await following(open, own.length === 0 ? [] : [...typed, ...own], around);
  return [
    ...as("typed", typed),
    ...own,
    ...as("follows", [...first.follow, ...second.follow]),
    ...as("unexplained", second.rest),
  ];
}
