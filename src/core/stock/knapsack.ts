import type { InParts } from "../parts";
import type { Kind } from "./cutting-task";

/** Cells worked through between two pauses: a few milliseconds. */
const CELLS_A_PART = 1_000_000;

/**
 * Pieces of one kind that are offered to the knapsack together. Where more are wanted than fit, single
 * pieces may be taken again and again; else bundles of 1, 2, 4 … and the rest make every number up to the demand.
 */
interface Bundle {
  /** Place of the kind in the list given. */
  readonly kind: number;
  readonly count: number;
  readonly size: number;
  readonly isEndless: boolean;
}

function bundlesOf(kinds: readonly Kind[], room: number): Bundle[] {
  return kinds.flatMap(({ size, demand }, kind) => {
    const most = Math.floor(room / size);
    if (demand >= most) return most > 0 ? [{ kind, count: 1, size, isEndless: true }] : [];
    const bundles: Bundle[] = [];
    let left = demand;
    for (let count = 1; left > 0; count *= 2) {
      const taken = Math.min(count, left);
      bundles.push({ kind, count: taken, size: taken * size, isEndless: false });
      left -= taken;
    }
    return bundles;
  });
}

/** From the largest room down: what a room is built on has not seen the bundle yet. */
function offerOnce(best: Float64Array, row: Uint8Array, size: number, value: number): void {
  for (let room = best.length - 1; room >= size; room -= 1) {
    const candidate = (best[room - size] as number) + value;
    if (candidate <= (best[room] as number)) continue;
    best[room] = candidate;
    row[room] = 1;
  }
}

/** From the smallest room up: what a room is built on may hold the piece already. */
function offerAgain(best: Float64Array, row: Uint8Array, size: number, value: number): void {
  for (let room = size; room < best.length; room += 1) {
    const candidate = (best[room - size] as number) + value;
    if (candidate <= (best[room] as number)) continue;
    best[room] = candidate;
    row[room] = 1;
  }
}

/**
 * Bounded knapsack by dynamic programming: the most valuable set of pieces for every room up to the
 * largest, no kind more often than it is wanted. One table serves every length of bar.
 */
export class Knapsack {
  private readonly bundles: readonly Bundle[];
  private readonly rooms: number;
  private readonly best: Float64Array;
  private readonly taken: Uint8Array;
  private active: readonly number[] = [];
  private kinds: number;

  /**
   * @param kinds - What may be taken; sizes in grid steps.
   * @param room - Largest room that will be asked for, grid steps.
   */
  constructor(kinds: readonly Kind[], room: number) {
    this.kinds = kinds.length;
    this.bundles = bundlesOf(kinds, room);
    this.rooms = room + 1;
    this.best = new Float64Array(this.rooms);
    this.taken = new Uint8Array(this.rooms * this.bundles.length);
  }

  /** Cells that one `fill` works through. */
  get cells(): number {
    return this.rooms * this.bundles.length;
  }

  /** Fills the table for the values given, one a kind; kinds without value are left out. */
  *fill(values: ArrayLike<number>): InParts<void> {
    this.best.fill(0);
    this.active = this.bundles.flatMap(({ kind }, index) => ((values[kind] ?? 0) > 0 ? [index] : []));
    let cells = 0;
    for (const index of this.active) {
      this.addBundle(index, values);
      cells += this.rooms;
      if (cells < CELLS_A_PART) continue;
      cells = 0;
      yield;
    }
  }

  private addBundle(index: number, values: ArrayLike<number>): void {
    const { kind, count, size, isEndless } = this.bundles[index] as Bundle;
    const { best, rooms } = this;
    const value = count * (values[kind] ?? 0);
    const row = this.taken.subarray(index * rooms, (index + 1) * rooms);
    row.fill(0);
    if (isEndless) offerAgain(best, row, size, value);
    else offerOnce(best, row, size, value);
  }

  /** Highest value that fits a room. */
  valueAt(room: number): number {
    return this.best[room] ?? 0;
  }

  /** Pieces of each kind of a set with that value, in the order of the kinds given. */
  countsAt(room: number): number[] {
    const counts = new Array<number>(this.kinds).fill(0);
    let left = room;
    for (const index of [...this.active].reverse()) {
      const { kind, count, size, isEndless } = this.bundles[index] as Bundle;
      while (this.taken[index * this.rooms + left] === 1) {
        counts[kind] = (counts[kind] ?? 0) + count;
        left -= size;
        if (!isEndless) break;
      }
    }
    return counts;
  }
}
