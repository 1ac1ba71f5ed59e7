/** A bar on offer in the exhaustive search: whole millimetres. */
export interface SmallBar {
  readonly length: number;
  readonly price: number;
  readonly inStock: number;
}

interface Open {
  readonly room: number;
}

function replaced<T>(list: readonly T[], place: number, value: T): T[] {
  return list.map((before, index) => (index === place ? value : before));
}

/**
 * Least cost of cutting every piece, found by trying every way: each piece in each bar already begun, or
 * in a new bar of each length. For a handful of pieces only. `Infinity` where nothing holds them.
 */
export function leastCost(
  pieces: readonly number[],
  bars: readonly SmallBar[],
  kerf: number,
  trim: number,
): number {
  const sorted = [...pieces].sort((a, b) => b - a);
  let best = Number.POSITIVE_INFINITY;
  const place = (index: number, open: readonly Open[], used: readonly number[], cost: number): void => {
    if (cost >= best) return;
    const piece = sorted[index];
    if (piece === undefined) {
      best = cost;
      return;
    }
    open.forEach(({ room }, bar) => {
      if (piece + kerf > room) return;
      place(index + 1, replaced(open, bar, { room: room - piece - kerf }), used, cost);
    });
    bars.forEach(({ length, price, inStock }, kind) => {
      const room = length - trim + kerf;
      if (piece + kerf > room || (used[kind] ?? 0) >= inStock) return;
      place(
        index + 1,
        [...open, { room: room - piece - kerf }],
        replaced(used, kind, (used[kind] ?? 0) + 1),
        cost + price,
      );
    });
  };
  place(
    0,
    [],
    bars.map(() => 0),
    0,
  );
  return best;
}

/** First-fit decreasing, piece by piece, as textbooks give it. */
export function firstFitBars(
  pieces: readonly { readonly length: number; readonly quantity: number }[],
  bar: number,
  kerf: number,
): number {
  const sorted = pieces
    .flatMap(({ length, quantity }) => new Array<number>(quantity).fill(length))
    .sort((a, b) => b - a);
  const rooms: number[] = [];
  for (const piece of sorted) {
    const index = rooms.findIndex((room) => piece + kerf <= room + 1e-9);
    if (index < 0) rooms.push(bar + kerf - piece - kerf);
    else rooms[index] = (rooms[index] ?? 0) - piece - kerf;
  }
  return rooms.length;
}

/** A repeatable stream of numbers from 0 to 1: the same instances on every machine (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
