import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { relation } from "../relation";

/** Grouping of furnace loads. */
export const LOAD_GROUPING = relation({
  title: "Furnace loads by recipe",
  source: "shop-arithmetic",
  locator: "heaviest pieces first, each into the first load of its recipe that has room",
  evidence: "standard",
  inputs: {
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

/** Like pieces that get one heat treatment. */
export interface LoadLine {
  /** Steel, window and temper in the shop's own words. */
  readonly recipe: string;
  readonly pieces: number;
  /** Of one piece, kg. */
  readonly mass: number;
}

/** What a furnace holds at a time; Infinity where there is no limit. */
export interface LoadLimits {
  readonly pieces: number;
  /** kg */
  readonly mass: number;
}

export interface Load {
  readonly recipe: string;
  readonly pieces: number;
  /** kg */
  readonly mass: number;
}

/** A sum of masses that meets the limit exactly must not spill over by rounding. */
const ROUNDING = 1e-9;

function checkPiece({ recipe, mass }: LoadLine, limits: LoadLimits): void {
  if (mass <= limits.mass * (1 + ROUNDING)) return;
  throw new InvalidValue(
    `"${recipe}": one piece of ${quantityText(mass, "kg")} is heavier than a load, ${quantityText(limits.mass, "kg")}`,
  );
}

/** Below any mass that can be left. */
const NO_ROOM = Number.NEGATIVE_INFINITY;

/** A load being filled. */
interface OpenLoad {
  pieces: number;
  mass: number;
}

/** Pieces of a mass that a load with so much left still takes. */
function room(left: OpenLoad, mass: number): number {
  const byMass = mass > 0 ? Math.floor((left.mass / mass) * (1 + ROUNDING) + ROUNDING) : Infinity;
  return Math.min(left.pieces, byMass);
}

/**
 * First fit of one recipe. A tree over the loads holds the most mass left under each of its nodes, so that
 * the first load with room for a piece is found in as many steps as the tree is deep, not by looking at them all.
 */
class FirstFit {
  readonly loads: OpenLoad[] = [];
  /** Leaves of the tree: a power of two. */
  private width = 1;
  /** Most mass left under each node, of loads that take a piece more; the root is node 1. */
  private most = [NO_ROOM, NO_ROOM];

  constructor(private readonly limits: LoadLimits) {}

  place({ pieces, mass }: LoadLine): void {
    let left = pieces;
    for (let at = this.firstFrom(0, mass); left > 0 && at >= 0; at = this.firstFrom(at + 1, mass)) {
      left -= this.fill(at, mass, left);
    }
    while (left > 0) {
      this.loads.push({ pieces: 0, mass: 0 });
      left -= this.fill(this.loads.length - 1, mass, left);
    }
  }

  private leftOf({ pieces, mass }: OpenLoad): OpenLoad {
    return { pieces: this.limits.pieces - pieces, mass: this.limits.mass - mass };
  }

  /** Puts in what fits of the pieces, at least one into a load just begun. */
  private fill(at: number, mass: number, pieces: number): number {
    const load = this.loads[at] as OpenLoad;
    const least = load.pieces === 0 ? 1 : 0;
    const taken = Math.max(least, Math.min(pieces, room(this.leftOf(load), mass)));
    load.pieces += taken;
    load.mass += taken * mass;
    this.update(at);
    return taken;
  }

  private update(at: number): void {
    if (at >= this.width) this.grow();
    const left = this.leftOf(this.loads[at] as OpenLoad);
    let node = this.width + at;
    this.most[node] = left.pieces >= 1 ? left.mass : NO_ROOM;
    for (node >>= 1; node >= 1; node >>= 1) {
      this.most[node] = Math.max(this.most[2 * node] as number, this.most[2 * node + 1] as number);
    }
  }

  private grow(): void {
    const leaves = this.most.slice(this.width);
    this.width *= 2;
    this.most = [...new Array<number>(this.width).fill(NO_ROOM), ...leaves, ...leaves.map(() => NO_ROOM)];
    for (let node = this.width - 1; node >= 1; node -= 1) {
      this.most[node] = Math.max(this.most[2 * node] as number, this.most[2 * node + 1] as number);
    }
  }

  private fits(node: number, mass: number): boolean {
    const left = this.most[node] as number;
    return left > NO_ROOM && room({ pieces: 1, mass: left }, mass) >= 1;
  }

  /** The first load, not before a place, that takes one more piece; -1 where there is none. */
  private firstFrom(place: number, mass: number): number {
    if (place >= this.width) return -1;
    let node = this.width + place;
    while (!this.fits(node, mass)) {
      // Up from every right child, then over to the neighbour; past the last leaf the way ends at the root.
      while (node % 2 === 1) node >>= 1;
      if (node === 0) return -1;
      node += 1;
    }
    while (node < this.width) node = this.fits(2 * node, mass) ? 2 * node : 2 * node + 1;
    return node - this.width;
  }
}

/**
 * Furnace loads: same recipe together, heaviest pieces first, each piece in one load.
 *
 * @param lines - Pieces by line; recipes are compared without case and spaces at the ends.
 * @param limits - What the furnace holds at a time.
 * @returns Loads in the order in which the recipes first appear.
 * @throws InvalidValue for a piece heavier than a load.
 */
export function furnaceLoads(lines: readonly LoadLine[], limits: LoadLimits): Load[] {
  const groups = new Map<string, LoadLine[]>();
  for (const line of lines) {
    checkPiece(line, limits);
    const key = line.recipe.trim().toLowerCase();
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [line]);
    else group.push(line);
  }
  return [...groups.values()].flatMap((group) => {
    const recipe = group[0]?.recipe.trim() ?? "";
    const packing = new FirstFit(limits);
    for (const line of [...group].sort((a, b) => b.mass - a.mass)) packing.place(line);
    return packing.loads.map((load) => ({ recipe, ...load }));
  });
}
