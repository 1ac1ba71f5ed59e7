import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";

/** Like pieces that get one heat treatment. */
export interface LoadLine {
  /** Steel, window and temper in the shop's own words. */
  readonly recipe: string;
  /** Pieces of the line, whole [-]. */
  readonly pieces: number;
  /** Of one piece [kg]. */
  readonly mass: number;
}

/** What a furnace holds at a time; Infinity where there is no limit. */
export interface LoadLimits {
  /** Most pieces of a load, 1 and more [-]. */
  readonly pieces: number;
  /** Most mass of a load, above 0 [kg]. */
  readonly mass: number;
}

/** What a line adds to the loads of the run. */
export interface LoadShare {
  /** Loads begun for this line; those begun for another line count there, so that a column adds up. */
  readonly added: number;
  /** Pieces that fill up loads begun for another line. */
  readonly shared: number;
}

/** Loads that hold the same; only loads that are closed are counted together. */
export interface PackedLoads {
  readonly count: number;
  readonly pieces: number;
  /** Of each [kg] */
  readonly mass: number;
}

/** A sum of masses that meets the limit exactly must not spill over by rounding. */
const ROUNDING = 1e-9;
/** Below any mass that can be left. */
const CLOSED = Number.NEGATIVE_INFINITY;

/**
 * Refuses a piece that no load holds.
 *
 * @throws InvalidValue naming the recipe, the mass of the piece and that of a load.
 */
export function checkPiece({ recipe, mass }: LoadLine, limits: LoadLimits): void {
  if (mass <= limits.mass * (1 + ROUNDING)) return;
  throw new InvalidValue(
    `kg a load: one piece of "${recipe}", ${quantityText(mass, "kg")}, is heavier than a load, ${quantityText(limits.mass, "kg")}`,
  );
}

/** Pieces of a mass that a load with so much left still takes. */
function piecesThatFit(left: LoadLimits, mass: number): number {
  const byMass = mass > 0 ? Math.floor((left.mass / mass) * (1 + ROUNDING) + ROUNDING) : Infinity;
  return Math.min(left.pieces, byMass);
}

interface OpenLoad {
  count: number;
  pieces: number;
  mass: number;
}

/**
 * First fit of one recipe, lines given heaviest piece first. A tree over the loads holds the most mass left under
 * each of its nodes, so that the first load with room for a piece is found in as many steps as the tree is deep.
 * Loads that are begun and at once closed stand in one leaf, so that a long line of like pieces costs no more.
 */
export class LoadPacking {
  private readonly loads: OpenLoad[] = [];
  /** Leaves of the tree: a power of two. */
  private width = 1;
  /** Most mass left under each node, of loads that take a piece more; the root is node 1. */
  private most = [CLOSED, CLOSED];

  constructor(
    private readonly limits: LoadLimits,
    /** Of the lightest piece that will come: a load without room for it is closed [kg] */
    private readonly lightest: number,
  ) {}

  get packed(): readonly PackedLoads[] {
    return this.loads;
  }

  /** Puts the pieces of a line into the loads already begun, then into new ones. */
  place({ pieces, mass }: LoadLine): LoadShare {
    let left = pieces;
    for (let at = this.firstFrom(0, mass); left > 0 && at >= 0; at = this.firstFrom(at + 1, mass)) {
      left -= this.fill(at, mass, left);
    }
    return { added: this.begin(left, mass), shared: pieces - left };
  }

  /** New loads for pieces of one mass; at least one piece goes into each. */
  private begin(pieces: number, mass: number): number {
    const each = Math.max(1, Math.min(pieces, piecesThatFit(this.limits, mass)));
    const full = Math.floor(pieces / each);
    const rest = pieces - full * each;
    const isClosed = piecesThatFit(this.leftOf({ pieces: each, mass: each * mass }), this.lightest) < 1;
    if (isClosed && full > 0) this.push({ count: full, pieces: each, mass: each * mass });
    for (let load = 0; !isClosed && load < full; load += 1) {
      this.push({ count: 1, pieces: each, mass: each * mass });
    }
    if (rest > 0) this.push({ count: 1, pieces: rest, mass: rest * mass });
    return full + (rest > 0 ? 1 : 0);
  }

  private push(load: OpenLoad): void {
    this.loads.push(load);
    this.update(this.loads.length - 1);
  }

  private leftOf({ pieces, mass }: LoadLimits): LoadLimits {
    return { pieces: this.limits.pieces - pieces, mass: this.limits.mass - mass };
  }

  private fill(at: number, mass: number, pieces: number): number {
    const load = this.loads[at] as OpenLoad;
    const taken = Math.min(pieces, piecesThatFit(this.leftOf(load), mass));
    load.pieces += taken;
    load.mass += taken * mass;
    this.update(at);
    return taken;
  }

  private update(at: number): void {
    if (at >= this.width) this.grow();
    const left = this.leftOf(this.loads[at] as OpenLoad);
    let node = this.width + at;
    this.most[node] = piecesThatFit(left, this.lightest) >= 1 ? left.mass : CLOSED;
    for (node >>= 1; node >= 1; node >>= 1) {
      this.most[node] = Math.max(this.most[2 * node] as number, this.most[2 * node + 1] as number);
    }
  }

  private grow(): void {
    const leaves = this.most.slice(this.width);
    this.width *= 2;
    this.most = [...new Array<number>(this.width).fill(CLOSED), ...leaves, ...leaves.map(() => CLOSED)];
    for (let node = this.width - 1; node >= 1; node -= 1) {
      this.most[node] = Math.max(this.most[2 * node] as number, this.most[2 * node + 1] as number);
    }
  }

  private fits(node: number, mass: number): boolean {
    const left = this.most[node] as number;
    return left > CLOSED && piecesThatFit({ pieces: 1, mass: left }, mass) >= 1;
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
