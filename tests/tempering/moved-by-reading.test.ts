import { describe, expect, test } from "vitest";
import { attempt, Refusal } from "../../src/core/refusal";
import { findSteel } from "../../src/core/steel/find";
import { retemper } from "../../src/core/tempering/retemper";
import { temperPlan } from "../../src/core/tempering/temper-plan";
import { temperedHardness } from "../../src/core/tempering/tempered";

/*
 * A reading moves the whole curve up or down and nothing else: a blade that reads as much more as its target is higher
 * is tempered the same. No source is needed.
 */

const HOURS = 2;
const OFFS = [-1.5, 1.5];

function planned(name: string, knownC: number, target: number, off: number) {
  const steel = findSteel(name);
  const hrc = temperedHardness(steel, knownC, { hours: HOURS }) + off;
  const plan = temperPlan(steel, target + off, { hours: HOURS, known: { celsius: knownC, hrc } });
  const { flag, startC, likelyC, highC, otherC, missesBy } = plan;
  return {
    flag,
    tempers: [startC, likelyC, highC, otherC].map((at) => at && Math.round(at * 1e6)),
    missesBy,
  };
}

describe("TEMPER_PLAN", () => {
  test.each<[string, number, readonly number[]]>([
    // A falling curve, at its limits too; a peak at 56 HRC (H13, 2 h); a dip; a long plateau at 58 HRC (D2).
    ["1084", 200, [66, 62, 58, 50, 40]],
    ["H13", 400, [57, 55.6, 55, 53.2, 50]],
    ["440B", 200, [56, 54, 53.4, 52.7]],
    ["D2", 205, [60, 58, 57.6, 55]],
    ["W2", 204.4, [57, 54.8]],
  ])("%s, read after %d °C, for %j HRC", (name, knownC, targets) => {
    for (const target of targets) {
      const still = planned(name, knownC, target, 0);
      for (const off of OFFS) {
        const moved = planned(name, knownC, target, off);
        expect([moved.flag, moved.tempers]).toEqual([still.flag, still.tempers]);
        expect(moved.missesBy).toBeCloseTo(still.missesBy, 9);
      }
    }
  });
});

describe("RETEMPER", () => {
  const next = (name: string, celsius: number, target: number, off: number) => {
    const steel = findSteel(name);
    const hrc = temperedHardness(steel, celsius, { hours: HOURS }) + off;
    const found = attempt(() => retemper(steel, { celsius, hours: HOURS, hrc }, target + off, HOURS));
    if (found instanceof Refusal) return "refused";
    return [
      found.nextC === null ? null : Math.round(found.nextC * 1e4),
      Math.round((found.likely - off) * 1e6),
    ];
  };

  test.each<[string, number, readonly number[]]>([
    ["1084", 200, [60, 57, 52, 45]],
    ["5160", 180, [56, 50]],
    // Beyond the dip or the peak that the blade has had, a target at the end of the rows, one under them.
    ["440B", 200, [55, 53.4, 52.8]],
    ["D2", 205, [59, 58, 56]],
    ["H13", 500, [55, 53, 50, 40]],
    ["W2", 250, [56, 54.8, 54, 45]],
  ])("%s, tempered at %d °C, for %j HRC", (name, celsius, targets) => {
    for (const target of targets)
      for (const off of OFFS)
        expect(next(name, celsius, target, off)).toEqual(next(name, celsius, target, 0));
  });
});
