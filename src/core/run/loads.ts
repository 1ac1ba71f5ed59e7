import { InvalidValue } from "../refusal";
import { relation } from "../relation";
import { checkPiece, type LoadLimits, type LoadLine, LoadPacking, type LoadShare } from "./load-packing";

/** Grouping of furnace loads. */
export const LOAD_GROUPING = relation({
  title: "Furnace loads by recipe",
  source: "shop-arithmetic",
  locator: "heaviest pieces first, each into the first load of its recipe that has room",
  evidence: "standard",
  inputs: {
    lines: { label: "lines with pieces", unit: "", min: 1, max: 100_000 },
    pieces: { label: "pieces a load", unit: "", min: 1, max: null },
    mass: { label: "mass a load", unit: "kg", min: 0, max: null },
  },
  output: { label: "loads", unit: "" },
  error: {
    size: null,
    unit: "",
    kind: "every piece in one load; with unequal pieces and a mass limit not always the fewest loads",
  },
});

export interface Load {
  /** Heat treatment that all pieces of the load get. */
  readonly recipe: string;
  /** In the load [-]. */
  readonly pieces: number;
  /** Of all pieces of the load [kg]. */
  readonly mass: number;
}

/** Pieces of one line that go into the furnace, with what the furnace holds of them. */
export interface FurnaceLine extends LoadLine {
  readonly limits: LoadLimits;
}

interface Group {
  readonly limits: LoadLimits;
  /** Places of the lines in the list that was given. */
  readonly members: number[];
}

/** Lines of one recipe and one furnace, in the order in which they first appear. */
function groupsOf(lines: readonly (FurnaceLine | undefined)[]): Group[] {
  const groups = new Map<string, Group>();
  lines.forEach((line, index) => {
    if (line === undefined) return;
    const { recipe, limits } = line;
    const key = `${recipe.trim().toLowerCase()}|${limits.pieces}|${limits.mass}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { limits, members: [index] });
    else group.members.push(index);
  });
  return [...groups.values()];
}

/** Packs one group, heaviest pieces first; tells what each line adds. */
function pack(
  { limits, members }: Group,
  lineAt: (index: number) => LoadLine,
  told: (index: number, share: LoadShare) => void,
): LoadPacking {
  const heaviestFirst = [...members].sort((a, b) => lineAt(b).mass - lineAt(a).mass);
  const packing = new LoadPacking(limits, lineAt(heaviestFirst[heaviestFirst.length - 1] as number).mass);
  for (const index of heaviestFirst) told(index, packing.place(lineAt(index)));
  return packing;
}

/** Rows of a sheet: a longer list stands nowhere. */
const MAX_LOADS = 1_048_576;

/** More lines than any shop plans at a time come of a slip, and sorting and packing them would take seconds. */
function checkLines(lines: number): void {
  const { max } = LOAD_GROUPING.inputs.lines;
  if (lines <= max) return;
  throw new InvalidValue(
    `${lines} lines with pieces given; give ${max} at most: lines of one recipe and one mass can stand as one, their count added`,
  );
}

function checkCount(loads: number): void {
  if (loads <= MAX_LOADS) return;
  throw new InvalidValue(
    `${loads} loads come of this, more than the ${MAX_LOADS} rows of a sheet: give what the furnace holds at a time, or part the run`,
  );
}

/**
 * Furnace loads: same recipe together, heaviest pieces first, each piece in one load.
 *
 * @param lines - Pieces by line, mass of one [kg], up to 100,000 lines; recipes are compared without case and spaces
 * at the ends.
 * @param limits - What the furnace holds at a time: pieces, mass [kg].
 * @returns Loads in the order in which the recipes first appear, mass [kg].
 * @throws InvalidValue for a piece heavier than a load, for more lines, and for more loads than a sheet has rows.
 * Error and source: {@link LOAD_GROUPING}.
 */
export function furnaceLoads(lines: readonly LoadLine[], limits: LoadLimits): Load[] {
  return loadsAlike(lines, limits).flatMap(({ count, recipe, pieces, mass }) =>
    Array.from({ length: count }, () => ({ recipe, pieces, mass })),
  );
}

/** The same loads, those that hold the same counted together where they follow one another. */
export function loadsAlike(
  lines: readonly LoadLine[],
  limits: LoadLimits,
): readonly (Load & { readonly count: number })[] {
  checkLines(lines.length);
  for (const line of lines) checkPiece(line, limits);
  const given = lines.map((line) => ({ ...line, limits }));
  const lineAt = (index: number) => given[index] as FurnaceLine;
  const alike = groupsOf(given).flatMap((group) => {
    const recipe = lineAt(group.members[0] as number).recipe.trim();
    return pack(group, lineAt, () => undefined).packed.map((load) => ({ ...load, recipe }));
  });
  checkCount(alike.reduce((sum, { count }) => sum + count, 0));
  return alike;
}

/**
 * Furnace loads of a run, line by line: lines of one recipe and one furnace share loads, as
 * {@link furnaceLoads} fills them.
 *
 * @param lines - Each line's pieces, mass of one [kg]; `undefined` for a line that goes into no furnace here.
 * @returns In the order of the lines; the loads added make up the loads of the run.
 */
export function loadShares(lines: readonly (FurnaceLine | undefined)[]): (LoadShare | undefined)[] {
  const shares = new Array<LoadShare | undefined>(lines.length).fill(undefined);
  for (const group of groupsOf(lines)) {
    pack(
      group,
      (index) => lines[index] as FurnaceLine,
      (index, share) => {
        shares[index] = share;
      },
    );
  }
  return shares;
}
