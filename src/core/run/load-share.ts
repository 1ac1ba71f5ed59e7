import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import type { LoadLimits, LoadLine } from "./loads";

/** Pieces of one line that go into the furnace, with what the furnace holds of them. */
export interface FurnaceLine extends LoadLine {
  readonly limits: LoadLimits;
}

/** What a line adds to the loads of the run. */
export interface LoadShare {
  /** Loads begun for this line; those begun for another line count there, so that a column adds up. */
  readonly added: number;
  /** Pieces that fill up loads begun for another line. */
  readonly shared: number;
}

/** Loads with the same room left. */
interface OpenLoads {
  count: number;
  pieces: number;
  mass: number;
}

/** A sum of masses that meets the limit exactly must not spill over by rounding. */
const ROUNDING = 1e-9;

/** Refuses a piece that no load holds. */
export function checkPiece({ mass, limits }: FurnaceLine): void {
  if (mass <= limits.mass * (1 + ROUNDING)) return;
  throw new InvalidValue(
    `kg a load: one piece of ${quantityText(mass, "kg")} is heavier than a load of ${quantityText(limits.mass, "kg")}`,
  );
}

function piecesThatFit({ pieces, mass }: LoadLimits, each: number): number {
  const byMass = each > 0 ? Math.floor((mass / each) * (1 + ROUNDING) + ROUNDING) : Infinity;
  return Math.min(pieces, byMass);
}

function lessened({ pieces, mass }: OpenLoads, taken: number, each: number, count: number): OpenLoads {
  return { count, pieces: pieces - taken, mass: mass - taken * each };
}

/** One kind of open loads after pieces went in: those filled up, the one left half way, those untouched. */
function filledUp(open: OpenLoads, left: number, each: number): { readonly now: OpenLoads[]; left: number } {
  const per = piecesThatFit(open, each);
  if (per < 1 || left === 0) return { now: [open], left };
  const full = Math.min(open.count, Math.floor(left / per));
  const rest = full < open.count ? left - full * per : 0;
  const now: OpenLoads[] = [];
  if (full > 0) now.push(lessened(open, per, each, full));
  if (rest > 0) now.push(lessened(open, rest, each, 1));
  const untouched = open.count - full - (rest > 0 ? 1 : 0);
  if (untouched > 0) now.push({ ...open, count: untouched });
  return { now, left: left - full * per - rest };
}

interface Group {
  open: OpenLoads[];
  /** Of the lightest piece still to come. */
  readonly lightest: number;
}

function begun(left: number, { mass, limits }: FurnaceLine): { readonly added: number; now: OpenLoads[] } {
  const per = Math.max(1, piecesThatFit(limits, mass));
  const empty: OpenLoads = { count: 1, ...limits };
  const added = Math.ceil(left / per);
  const full = Math.floor(left / per);
  const now: OpenLoads[] = [];
  if (full > 0) now.push(lessened(empty, per, mass, full));
  if (added > full) now.push(lessened(empty, left - full * per, mass, 1));
  return { added, now };
}

function place(group: Group, line: FurnaceLine): LoadShare {
  let left = line.pieces;
  const before: OpenLoads[] = [];
  for (const open of group.open) {
    const step = filledUp(open, left, line.mass);
    before.push(...step.now);
    left = step.left;
  }
  const { added, now } = begun(left, line);
  // A load without room for the lightest piece is closed: what is looked at stays short however long the run.
  group.open = [...before, ...now].filter((open) => piecesThatFit(open, group.lightest) >= 1);
  return { added, shared: line.pieces - left };
}

function keyOf({ recipe, limits }: FurnaceLine): string {
  return `${recipe.trim().toLowerCase()}|${limits.pieces}|${limits.mass}`;
}

/**
 * Furnace loads of a run, line by line: lines of one recipe and one furnace share loads, heaviest pieces
 * first, each piece in one load, as `furnaceLoads` fills them.
 *
 * @param lines - `undefined` for a line that goes into no furnace here.
 * @returns In the order of the lines; the loads added make up the loads of the run.
 */
export function loadShares(lines: readonly (FurnaceLine | undefined)[]): (LoadShare | undefined)[] {
  const groups = new Map<string, number[]>();
  lines.forEach((line, index) => {
    if (line === undefined) return;
    const key = keyOf(line);
    const members = groups.get(key);
    if (members === undefined) groups.set(key, [index]);
    else members.push(index);
  });
  const shares = new Array<LoadShare | undefined>(lines.length).fill(undefined);
  const massOf = (index: number) => lines[index]?.mass ?? 0;
  for (const members of groups.values()) {
    members.sort((a, b) => massOf(b) - massOf(a));
    const group: Group = { open: [], lightest: massOf(members[members.length - 1] ?? 0) };
    for (const index of members) {
      const line = lines[index];
      if (line !== undefined) shares[index] = place(group, line);
    }
  }
  return shares;
}
