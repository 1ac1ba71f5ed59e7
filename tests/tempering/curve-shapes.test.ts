import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import {
  blendedCurve,
  crossings,
  extremes,
  type HardnessCurve,
  joinedCurve,
  polynomialCurve,
} from "../../src/core/tempering/curve";
import { temperingRelations } from "../../src/core/tempering/relations";

/** Straight pieces through points, so that every answer can be worked out by hand. */
function pieces(...points: readonly (readonly [parameter: number, hrc: number])[]): HardnessCurve {
  const [first, last] = [points[0] as (typeof points)[number], points.at(-1) as (typeof points)[number]];
  return {
    from: first[0],
    to: last[0],
    breaks: points.slice(1, -1).map(([parameter]) => parameter),
    hrcAt(parameter) {
      const right = Math.max(
        1,
        points.findIndex(([at]) => at >= parameter),
      );
      const [[x0, y0], [x1, y1]] = [points[right - 1], points[right]] as [[number, number], [number, number]];
      return y0 + ((parameter - x0) / (x1 - x0)) * (y1 - y0);
    },
  };
}

const near = (...parameters: number[]) => parameters.map((parameter) => expect.closeTo(parameter, 9));

/** Falls, rises to a peak of 62 at 12 and falls again: secondary hardening. */
const peaked = pieces([8, 64], [10, 58], [12, 62], [16, 50]);

describe("where a curve meets a hardness", () => {
  test("on each of its slopes", () => {
    expect(crossings(peaked, 60, 8, 16)).toEqual(near(8 + 8 / 6, 11, 12 + 2 / 3));
    expect(crossings(peaked, 65, 8, 16)).toEqual([]);
    expect(crossings(peaked, 49, 8, 16)).toEqual([]);
  });

  test("once where it turns, and once at an end", () => {
    expect(crossings(peaked, 58, 8, 12.5)).toEqual(near(10));
    expect(crossings(peaked, 62, 10, 16)).toEqual(near(12));
    expect(crossings(peaked, 64, 8, 16)).toEqual(near(8));
    expect(crossings(peaked, 50, 8, 16)).toEqual(near(16));
  });

  test("only between the ends that were asked for, breaks outside them left aside", () => {
    expect(crossings(peaked, 60, 10.5, 11.5)).toEqual(near(11));
    expect(crossings(peaked, 60, 12, 13)).toEqual(near(12 + 2 / 3));
    expect(crossings(peaked, 60, 8, 10)).toEqual(near(8 + 8 / 6));
  });

  test("at both ends of a flat stretch", () => {
    const flat = pieces([8, 60], [10, 56], [13, 56], [15, 50]);
    expect(crossings(flat, 56, 8, 15)).toEqual(near(10, 13));
  });

  test("a curved slope to a thousand millionth of a point", () => {
    // 50 - x³ about 12: 42 HRC at x = 2, 51 at x = -1.
    const cubic = polynomialCurve([50, 0, 0, -1], 12, 8, 16);
    expect(crossings(cubic, 42, 8, 16)).toEqual([expect.closeTo(14, 8)]);
    expect(crossings(cubic, 51, 8, 16)).toEqual([expect.closeTo(11, 8)]);
    expect(cubic.breaks).toEqual([]);
    expect(cubic.hrcAt(13)).toBe(49);
    expect(polynomialCurve([50, -4, 0.5], 12, 8, 16).hrcAt(10)).toBe(60);
  });
});

describe("highest and lowest of a stretch", () => {
  test("turning points inside it count, those outside do not", () => {
    expect(extremes(peaked, 8, 16)).toEqual({ lowest: 50, highest: 64 });
    expect(extremes(peaked, 9, 12.5)).toEqual({ lowest: 58, highest: 62 });
    expect(extremes(peaked, 10.5, 11.5)).toEqual({ lowest: 59, highest: 61 });
    expect(extremes(peaked, 8, 9)).toEqual({ lowest: 61, highest: 64 });
    expect(extremes(peaked, 13, 14)).toEqual({ lowest: 56, highest: 59 });
  });
});

describe("curves put together", () => {
  test("joined: the first is lifted to meet the second, which holds from there on", () => {
    const low = pieces([6, 66], [8, 62], [11, 60]);
    const joined = joinedCurve(low, peaked);
    // At 8 the first reads 62 and the second 64: lifted by 2.
    expect([6, 7, 8, 10, 16].map((at) => joined.hrcAt(at))).toEqual([68, 66, 64, 58, 50]);
    expect([joined.from, joined.to]).toEqual([6, 16]);
    // The first one's break at 8 is the joint itself and is not named twice.
    expect(joined.breaks).toEqual([8, 10, 12]);
    expect(joinedCurve(pieces([6, 66], [7, 65], [9, 61]), peaked).breaks).toEqual([7, 8, 10, 12]);
    // A break of the first beyond the joint is none.
    expect(joinedCurve(pieces([6, 66], [9, 63], [11, 60]), peaked).breaks).toEqual([8, 10, 12]);
  });

  test("blended: a share of each, over the span that both have, breaks of both in order", () => {
    const other = pieces([9, 60], [11, 56], [18, 42]);
    const blend = blendedCurve(peaked, other, 0.25);
    expect([blend.from, blend.to]).toEqual([9, 16]);
    expect(blend.breaks).toEqual([10, 11, 12]);
    // At 10: three quarters of 58 and a quarter of 58; at 12: of 62 and of 54.
    expect(blend.hrcAt(10)).toBe(58);
    expect(blend.hrcAt(12)).toBe(60);
  });
});

describe("EVIDENCE tells where a table rises with the temper, and why", () => {
  const notes = (name: string) => temperingRelations(findSteel(name)).map(({ note }) => note ?? "");

  // Secondary hardening of 5 % Cr hot-work steel, peak near 500 °C: another sheet, recalled, prints 52, 54, 56 and 54 HRC at 300, 400, 500 and 550 °C.
  test("H13 hardens anew", () => {
    expect(notes("H13").join()).toMatch(/rises from 350 °C .* to 500 °C .*: .*secondary hardening/);
  });

  // 53 and 54 HRC at 300 and 350 °C in whole points; the sheet of 440C stays at 56 from 316 to 427 °C.
  test("440B rises by a point of the tester", () => {
    expect(notes("440B").join()).toMatch(
      /rises from 300 °C .* to 350 °C .*: no more than a reading is good for/,
    );
  });

  test("others only fall", () => {
    for (const name of ["O1", "A2", "D2", "S7", "440C", "1084"])
      expect(notes(name).join(), name).not.toContain("as printed it rises");
  });
});
