import { describe, expect, test } from "vitest";
import { YIELD_RATIO, YIELD_STRENGTH } from "../../src/core/hardness/strength";
import { edgeForLoad, edgeLoad, rollOrChip } from "../../src/core/mechanics/edge-load";
import { yieldBand } from "../../src/core/mechanics/yield";

const TAN_15 = 2 - Math.sqrt(3);
const EDGE = { behind: 0.4, angle: 15, contact: 0.1 };
const YIELD = 1800;

describe("a wedge loaded across its edge", () => {
  test("by hand at 15° a side: tan 15° is 2 - √3", () => {
    const { first, depth, whole } = edgeLoad(EDGE, YIELD);
    // σ c tan² a ÷ 0.75; bending σ t² ÷ 6 over the lever from shoulder to the middle of the contact.
    expect(first).toBeCloseTo((1800 * 0.1 * TAN_15 ** 2) / 0.75, 9);
    expect(depth).toBe(0.1);
    expect(whole).toBeCloseTo((1800 * 0.16) / (6 * (0.4 / (2 * TAN_15) - 0.05)), 9);
  });

  test("a contact as deep as the bevel: the first set is the whole one", () => {
    // Both are then σ t² ÷ 3 h, statics of a wedge under an even load.
    const edge = { ...EDGE, contact: 0.4 / (2 * Math.tan((15 * Math.PI) / 180)) };
    const { first, whole } = edgeLoad(edge, YIELD);
    expect(first / whole).toBeCloseTo(1, 9);
    expect(whole).toBeCloseTo((1800 * 0.16) / (3 * edge.contact), 9);
    expect(() => edgeLoad({ ...edge, contact: edge.contact * 1.0001 }, YIELD)).toThrow(
      /deeper than the bevel/,
    );
  });

  test("twice the strength bears twice as much, twice the edge in all sizes too", () => {
    const { first, whole } = edgeLoad(EDGE, YIELD);
    const large = edgeLoad({ behind: 0.8, angle: 15, contact: 0.2 }, YIELD);
    const strong = edgeLoad(EDGE, 2 * YIELD);
    expect([strong.first, strong.whole, large.first, large.whole]).toEqual(
      [first, whole, first, whole].map((load) => expect.closeTo(2 * load, 9)),
    );
  });
});

describe("the edge for a load", () => {
  const { behind: _, ...rest } = EDGE;

  test("bears just that load", () => {
    for (const behind of [0.06, 0.4, 3, 9.9]) {
      const { whole } = edgeLoad({ ...EDGE, behind }, YIELD);
      expect(edgeForLoad(whole, rest, YIELD)).toBeCloseTo(behind, 9);
    }
  });

  test("is refused where it would be thinner than the contact is deep, or thicker than 10 mm", () => {
    const thinnest = 2 * 0.1 * TAN_15;
    const least = (YIELD * thinnest ** 2) / (6 * 0.05);
    expect(() => edgeForLoad(least * 0.999, rest, YIELD)).toThrow(
      /borne by a bevel no higher than the contact/,
    );
    expect(edgeForLoad(least * 1.001, rest, YIELD)).toBeGreaterThan(thinnest);
    const most = (YIELD * 100) / (6 * (10 / (2 * TAN_15) - 0.05));
    expect(() => edgeForLoad(most * 1.001, rest, YIELD)).toThrow(/would need over 10 mm behind the edge/);
    expect(edgeForLoad(most * 0.999, rest, YIELD)).toBeLessThan(10);
  });
});

// Common practice, no source: soft edges roll, hard ones chip, between them either.
test.each([
  [50, /usually rolls/],
  [58, /usually rolls/],
  [58.1, /may roll or chip/],
  [60.9, /may roll or chip/],
  [61, /usually chips/],
  [66, /usually chips/],
])("an overloaded edge of %d HRC", (hrc, said) => {
  expect(rollOrChip(hrc)).toMatch(said);
});

test("the band of a yield strength is the stated share to both sides, that of the ratio where a temper is given", () => {
  for (const [band, { error }] of [
    [yieldBand(52), YIELD_STRENGTH],
    [yieldBand(52, 250), YIELD_RATIO],
  ] as const) {
    const share = (error.size ?? 0) / 100;
    expect(share).toBeGreaterThan(0);
    expect(band.high / band.likely).toBeCloseTo(1 + share, 9);
    expect(band.low / band.likely).toBeCloseTo(1 - share, 9);
  }
});
