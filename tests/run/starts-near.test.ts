import fc from "fast-check";
import { expect, test } from "vitest";
import { startsBetween, startsNear } from "../../src/core/run/binomial";
import { chanceOfEnough, chancesOfEnough, startsNeeded } from "../../src/core/run/starts";

// Halving between two limits that hold the answer is the check: it needs no guess.

test("a guess, right or far off, leads to the number that halving finds", () => {
  const lot = fc.record({
    good: fc.integer({ min: 1, max: 3000 }),
    share: fc.double({ min: 0.05, max: 0.99, noNaN: true }),
    confidence: fc.double({ min: 0.5, max: 0.99, noNaN: true }),
    guess: fc.double({ min: 0, max: 1, noNaN: true }),
    off: fc.integer({ min: -2, max: 2 }),
  });
  fc.assert(
    fc.property(lot, ({ good, share, confidence, guess, off }) => {
      const [fewest, most] = [good, Math.ceil(good / 0.03) + 400];
      const found = startsBetween(good, share, confidence, fewest, most);
      const limits = [fewest, most] as const;
      const anywhere = fewest + Math.floor(guess * (most - fewest));
      const near = Math.min(most, Math.max(fewest, found + off));
      for (const from of [anywhere, near])
        expect(startsNear(good, share, confidence, from, limits)).toBe(found);
    }),
    { numRuns: 300 },
  );
});

// The chances summed one start after the other, from as many starts as blades are wanted, are the check: no logarithm
// of a factorial, no guess.

const order = fc.record({
  good: fc.oneof(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 60, max: 3000 })),
  share: fc.double({ min: 0.02, max: 1, noNaN: true }),
  confidence: fc.double({ min: 1e-6, max: 0.999999, noNaN: true }),
});

test("the number to start is that at which the chances, summed one by one, reach the confidence", () => {
  fc.assert(
    fc.property(order, ({ good, share, confidence }) => {
      let starts = good;
      for (const chance of chancesOfEnough(good, share)) {
        if (chance >= confidence - 1e-12) break;
        starts += 1;
      }
      expect(startsNeeded(good, share, confidence)).toBe(starts);
    }),
    { numRuns: 300 },
  );
});

test("the chance of enough is the sum of the chances, far below the mean and far above it", () => {
  fc.assert(
    fc.property(order, fc.integer({ min: 0, max: 3000 }), ({ good, share }, more) => {
      let [at, summed] = [0, 0];
      for (const chance of chancesOfEnough(good, share)) {
        summed = chance;
        if (at === more || chance === 1) break;
        at += 1;
      }
      const found = chanceOfEnough(good + more, good, share);
      // The sum begins with yield to the power of good: below 1e-300 it has no places left.
      if (summed > 1e-250) expect(Math.abs(found / summed - 1)).toBeLessThan(1e-10);
      else expect(found).toBeLessThan(1e-200);
    }),
    { numRuns: 300 },
  );
});
