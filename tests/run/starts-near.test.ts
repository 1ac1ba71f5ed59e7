import fc from "fast-check";
import { expect, test } from "vitest";
import { startsBetween, startsNear } from "../../src/core/run/binomial";

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
