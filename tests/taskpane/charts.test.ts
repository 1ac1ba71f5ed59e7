import { describe, expect, test } from "vitest";
import { type BandChart, bandChart } from "../../src/taskpane/charts/band-chart";
import { smallCurve } from "../../src/taskpane/charts/small-curve";
import { smoothPath } from "../../src/taskpane/charts/smooth";
import type { Shape } from "../../src/taskpane/charts/svg";
import { typedCoupons } from "../../src/taskpane/tempering/own-readings";
import { CELSIUS, FAHRENHEIT } from "../../src/taskpane/tempering/temper-scales";
import { randomFrom } from "../stock/brute-force";

type Pixel = readonly [number, number];

const all = (shape: Shape): Shape[] => [
  shape,
  ...shape.children.flatMap((child) => (typeof child === "string" ? [] : all(child))),
];
const ofKind = (shape: Shape, kind: string) =>
  all(shape).filter(({ attributes }) => attributes.class === kind);
const texts = (shape: Shape) =>
  ofKind(shape, "mark").map(({ attributes, children }) => ({
    text: String(children[0]),
    x: Number(attributes.x),
    y: Number(attributes.y),
  }));

/** Points along each piece of a path of cubic pieces, by the definition of a Bézier curve. */
function alongPieces(path: string): Pixel[][] {
  const figures = (path.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
  const points = figures.flatMap((x, at) => (at % 2 === 0 ? [[x, figures[at + 1] ?? 0] as const] : []));
  const pieces = (points.length - 1) / 3;
  return Array.from({ length: pieces }, (_, piece) => {
    const four = points.slice(3 * piece, 3 * piece + 4);
    return Array.from({ length: 21 }, (_, step) => {
      const t = step / 20;
      const weights = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
      const sum = (axis: 0 | 1) =>
        weights.reduce((total, weight, at) => total + weight * (four[at]?.[axis] ?? 0), 0);
      return [sum(0), sum(1)] as const;
    });
  });
}

describe("a smooth line", () => {
  const random = randomFrom(23);
  const lines = Array.from({ length: 200 }, () =>
    Array.from({ length: 8 }, (_, at): Pixel => [at * 10 + 5 * random(), 100 * random()]),
  );
  const pieces = lines.flatMap((line) =>
    alongPieces(smoothPath(line)).map((piece, at) => ({
      heights: piece.map(([, y]) => y),
      from: line[at]?.[1] ?? Number.NaN,
      to: line[at + 1]?.[1] ?? Number.NaN,
    })),
  );

  test("goes through every point", () => {
    expect(pieces.length).toBe(200 * 7);
    for (const { heights, from, to } of pieces) {
      expect(heights[0]).toBeCloseTo(from, 1);
      expect(heights.at(-1)).toBeCloseTo(to, 1);
    }
  });

  test("never leaves the span of two neighbours", () => {
    for (const { heights, from, to } of pieces) {
      expect(Math.min(...heights)).toBeGreaterThan(Math.min(from, to) - 0.02);
      expect(Math.max(...heights)).toBeLessThan(Math.max(from, to) + 0.02);
    }
  });
});

const points = [150, 200, 250, 300, 350, 400].map((x) => {
  const likely = 70 - x / 25;
  return { x, low: likely - 1.5, likely, high: likely + 1.5 };
});
const chart: BandChart = {
  title: "",
  description: "",
  points,
  xName: "temper",
  yName: "HRC",
  xScales: [CELSIUS, FAHRENHEIT],
};

describe("a chart", () => {
  test.each([274, 350, 520])(
    "has round marks in both scales, each where it lies, %i pixels wide",
    (width) => {
      const marks = texts(bandChart(chart, width)).filter(({ text }) => /^\d{3}$/.test(text));
      const rows = [...new Set(marks.map(({ y }) => y))].sort((one, other) => one - other);
      const [celsius = [], fahrenheit = []] = rows.map((row) => marks.filter(({ y }) => y === row));
      expect(celsius.length).toBeGreaterThan(1);
      expect(fahrenheit.length).toBeGreaterThan(1);
      const [first, last] = [celsius[0], celsius.at(-1)];
      const pixels = ((last?.x ?? 0) - (first?.x ?? 0)) / (Number(last?.text) - Number(first?.text));
      for (const { text, x } of fahrenheit) {
        expect(Number(text) % 50).toBe(0);
        // 32 °F at 0 °C and 212 °F at 100 °C fix the scale.
        expect(x).toBeCloseTo(
          (first?.x ?? 0) + (((Number(text) - 32) * 100) / 180 - Number(first?.text)) * pixels,
          4,
        );
      }
    },
  );

  test("shows the band of a use as a stripe and the aim as a line, on the axis of the curve", () => {
    const drawn = bandChart({ ...chart, wanted: { low: 58, high: 61, aim: 60, name: "use" } }, 400);
    const [stripe] = ofKind(drawn, "wanted");
    const [aim] = ofKind(drawn, "aim");
    const [top, high] = [Number(stripe?.attributes.y), Number(stripe?.attributes.height)];
    // The aim lies a third of the stripe below its top.
    expect((Number(aim?.attributes.y1) - top) / high).toBeCloseTo(1 / 3, 6);
    // The line crosses 60 at 250 °C, a point of it.
    const [likely] = ofKind(drawn, "likely");
    expect(String(likely?.attributes.d)).toContain(Number(aim?.attributes.y1).toFixed(2));
  });

  test("names up to three lines at their ends, a row apart", () => {
    const like = (shift: number) => points.map(({ x, likely }) => ({ x, y: likely + shift }));
    const lines = [
      { name: "52100", points: like(0.1) },
      { name: "O1", points: like(-0.1) },
    ];
    const drawn = bandChart({ ...chart, beside: { name: "1095", lines } }, 350);
    const names = texts(drawn).filter(({ text }) => ["1095", "52100", "O1"].includes(text));
    const heights = names.map(({ y }) => y).sort((one, other) => one - other);
    expect(names.length).toBe(3);
    expect(heights.every((y, at) => at === 0 || y - (heights[at - 1] ?? 0) >= 14)).toBe(true);
    for (const { text, x } of names) expect(x + 7 * text.length).toBeLessThanOrEqual(350);
    expect(all(drawn).filter(({ attributes }) => String(attributes.class).startsWith("beside"))).toHaveLength(
      2,
    );
  });

  test("is small in a cell, its dot on the line", () => {
    const drawn = smallCurve(points, 225, { width: 54, height: 20 });
    const [dot] = ofKind(drawn, "own");
    // 4 pixels of room a side: 225 °C of 150 to 400 lies 0.3 of 46 pixels on; 61 HRC of 52.5 to 65.5 lies 4.5 / 13 below the top of 12.
    expect(Number(dot?.attributes.cx)).toBeCloseTo(4 + 0.3 * 46, 6);
    expect(Number(dot?.attributes.cy)).toBeCloseTo(4 + (12 * 4.5) / 13, 6);
    expect(ofKind(smallCurve(points, 500, { width: 54, height: 20 }), "own")).toEqual([]);
  });
});

describe("own coupons", () => {
  test("are pairs of temper and reading, in either scale", () => {
    expect(typedCoupons("200 61; 212 F 60,5 ;")).toEqual([
      { x: 200, y: 61 },
      { x: 100, y: 60.5 },
    ]);
  });

  test.each(["200", "200 61 230 59", "warm 60"])("%s is refused with a sentence", (text) => {
    expect(() => typedCoupons(text)).toThrow(/is no coupon: give its temper/);
  });
});
