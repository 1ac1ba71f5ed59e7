import fc from "fast-check";
import { expect, test } from "vitest";
import { toTheEnd } from "../../src/core/parts";
import { Knapsack } from "../../src/core/stock/knapsack";

interface Item {
  readonly size: number;
  readonly demand: number;
  readonly value: number;
}

/** Every number of every item tried. */
function mostValue([item, ...others]: readonly Item[], room: number): number {
  if (item === undefined) return 0;
  let most = 0;
  for (let count = 0; count <= item.demand && count * item.size <= room; count += 1) {
    most = Math.max(most, count * item.value + mostValue(others, room - count * item.size));
  }
  return most;
}

test("the knapsack finds what trying everything finds, and its counts add up to it", () => {
  const item = fc.record({
    size: fc.integer({ min: 1, max: 12 }),
    demand: fc.integer({ min: 1, max: 6 }),
    value: fc.integer({ min: 0, max: 20 }),
  });
  fc.assert(
    fc.property(
      fc.array(item, { minLength: 1, maxLength: 5 }),
      fc.integer({ min: 1, max: 40 }),
      (items, room) => {
        const knapsack = new Knapsack(
          items.map(({ size, demand }, id) => ({ id, size, demand })),
          room,
        );
        toTheEnd(knapsack.fill(items.map(({ value }) => value)));
        for (const part of [room, Math.floor(room / 2)]) {
          const counts = knapsack.countsAt(part);
          expect(knapsack.valueAt(part)).toBe(mostValue(items, part));
          expect(items.reduce((sum, { value }, index) => sum + value * (counts[index] ?? 0), 0)).toBe(
            knapsack.valueAt(part),
          );
          expect(
            items.reduce((sum, { size }, index) => sum + size * (counts[index] ?? 0), 0),
          ).toBeLessThanOrEqual(part);
          items.forEach(({ demand }, index) => {
            expect(counts[index]).toBeLessThanOrEqual(demand);
          });
        }
      },
    ),
  );
});
