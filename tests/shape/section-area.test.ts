import { describe, expect, it } from "vitest";
import { findGrind } from "../../src/core/shape/grinds";
import type { Section } from "../../src/core/shape/section";
import { sectionArea } from "../../src/core/shape/section-area";
import { segmentArea, segmentHeight, segmentRadius } from "../../src/core/shape/segment";

type Sizes = Omit<Section, "grind">;

function area(grind: string, sizes: Sizes): number {
  return sectionArea({ grind: findGrind(grind), ...sizes });
}

/**
 * Twice the area under a half profile, by the midpoint rule: knows nothing of the formulas under test.
 */
function byStrips(half: (fromSpine: number) => number, width: number, strips = 400_000): number {
  const step = width / strips;
  let sum = 0;
  for (let strip = 0; strip < strips; strip += 1) sum += half((strip + 0.5) * step);
  return 2 * sum * step;
}

// Worked by hand from the school formulas named beside each (rectangle, trapezium, triangle, circular segment).
const worked: [string, Sizes, number, number, string][] = [
  ["rectangle", { width: 40, thickness: 5 }, 200, 0, "40 × 5"],
  ["flat", { width: 45, thickness: 3, edge: 0.4 }, 76.5, 1e-12, "trapezium 45 (3 + 0.4) / 2"],
  ["flat", { width: 45, thickness: 3 }, 67.5, 0, "triangle 45 × 3 / 2"],
  [
    "part flat",
    { width: 40, thickness: 4, edge: 0.5, bevelHeight: 18 },
    128.5,
    1e-12,
    "4 × 22 + 18 × 4.5 / 2",
  ],
  ["chisel", { width: 40, thickness: 4, edge: 0.5, bevelHeight: 18 }, 128.5, 1e-12, "as part flat"],
  [
    "hollow",
    { width: 32, thickness: 4, edge: 0.5, bevelHeight: 16, curve: 127 },
    94.5213,
    5e-5,
    "100 less 2 segments, R 127",
  ],
  [
    "hollow",
    { width: 32, thickness: 4, edge: 0.5, bevelHeight: 16, curve: 50.8 },
    86.2154,
    5e-5,
    "100 less 2 segments, R 50.8",
  ],
  ["convex", { width: 40, thickness: 4, curve: 0.5 }, 106.7033, 5e-5, "80 plus 2 segments, R 401.25"],
  ["lenticular", { width: 40, thickness: 6 }, 160.7177, 5e-5, "2 segments, R 68.1667"],
  ["lenticular", { width: 50, thickness: 5 }, 166.9995, 5e-5, "2 segments"],
  ["lenticular", { width: 45, thickness: 5.5 }, 165.4919, 5e-5, "2 segments, R 93.4205"],
  ["diamond", { width: 40, thickness: 6 }, 120, 0, "40 × 6 / 2"],
  ["hexagonal", { width: 40, thickness: 5, flatWidth: 12 }, 130, 0, "5 (40 + 12) / 2"],
  [
    "t-back",
    { width: 24, thickness: 2, edge: 0.3, flatWidth: 7, ribHeight: 6 },
    69.6,
    1e-12,
    "7 × 6 + 24 × 2.3 / 2",
  ],
];

describe("section areas", () => {
  it.each(worked)("%s %o is %f mm² (%f)", (grind, sizes, expected, within) => {
    expect(Math.abs(area(grind, sizes) - expected)).toBeLessThanOrEqual(within);
  });

  it("agrees with strips across a hollow", () => {
    // Middle plane y = 0; the arc's centre lies outside, on the normal through the middle of the bevel face.
    const [t, e, height, radius] = [4, 0.5, 16, 50.8];
    const rise = (t - e) / 2;
    const face = Math.hypot(height, rise);
    const reach = Math.sqrt(radius ** 2 - (face / 2) ** 2);
    const centre = {
      x: 16 + height / 2 + (rise / face) * reach,
      y: (t / 2 + e / 2) / 2 + (height / face) * reach,
    };
    const half = (x: number) => (x < 16 ? t / 2 : centre.y - Math.sqrt(radius ** 2 - (x - centre.x) ** 2));
    const sizes = { width: 32, thickness: t, edge: e, bevelHeight: height, curve: radius };
    expect(area("hollow", sizes)).toBeCloseTo(byStrips(half, 32), 6);
  });

  it("agrees with strips across a lens with a blunt edge", () => {
    const [width, thickness, edge] = [40, 6, 1.5];
    const rise = (thickness - edge) / 2;
    const radius = (width ** 2 / 4 + rise ** 2) / (2 * rise);
    const half = (x: number) => edge / 2 + Math.sqrt(radius ** 2 - (x - width / 2) ** 2) - (radius - rise);
    expect(area("lenticular", { width, thickness, edge })).toBeCloseTo(byStrips(half, width), 6);
  });

  it("agrees with strips across diamonds and hexagons with a blunt edge", () => {
    const half = (x: number) => {
      const out = Math.max(0, Math.abs(x - 20) - 6);
      return 2.5 - (out / 14) * (2.5 - 0.6);
    };
    const sizes = { width: 40, thickness: 5, edge: 1.2, flatWidth: 12 };
    expect(area("hexagonal", sizes)).toBeCloseTo(byStrips(half, 40), 6);
    const ridge = (x: number) => 2.5 - (Math.abs(x - 20) / 20) * (2.5 - 0.6);
    expect(area("diamond", { width: 40, thickness: 5, edge: 1.2 })).toBeCloseTo(byStrips(ridge, 40), 6);
  });
});

describe("circular segments", () => {
  it("match the school formula R² acos((R-h)/R) - (R-h) √(2Rh-h²)", () => {
    // c 20, h 1: R 50.5, S 13.35996.
    expect(segmentRadius(20, 1)).toBe(50.5);
    expect(segmentArea(20, 1)).toBeCloseTo(13.35996, 5);
    for (const height of [1, 2, 4, 7, 10]) {
      const radius = (100 + height ** 2) / (2 * height);
      const rest = radius - height;
      const school =
        radius ** 2 * Math.acos(rest / radius) - rest * Math.sqrt(2 * radius * height - height ** 2);
      expect(segmentArea(20, height) / school).toBeCloseTo(1, 12);
    }
  });

  it("keep their digits where the school formula loses them", () => {
    // Series of the segment, 2ch/3 (1 + (4/5) q - (16/35) q² …) with q = (h/c)²; the next term is below 1e-16 here.
    for (const height of [1e-2, 1e-4, 1e-7, 1e-12]) {
      const q = (height / 20) ** 2;
      const series = ((2 * 20 * height) / 3) * (1 + (4 / 5) * q - (16 / 35) * q * q);
      expect(Math.abs(segmentArea(20, height) / series - 1)).toBeLessThan(1e-14);
    }
    expect(segmentArea(20, 0)).toBe(0);
    expect(segmentArea(20, 10)).toBeCloseTo(50 * Math.PI, 12);
  });

  it("have the height of a wheel on a 16 mm bevel", () => {
    // h = R - √(R² - c²/4): wheels of 2, 4, 10 and 72 in diameter.
    const heights = [25.4, 50.8, 127, 914.4].map((radius) => segmentHeight(radius, 16));
    [1.2927, 0.6339, 0.2522, 0.035].forEach((expected, index) => {
      expect(heights[index]).toBeCloseTo(expected, 4);
    });
  });
});

describe("impossible sections", () => {
  it.each<[string, Sizes, string]>([
    ["flat", { width: 40, thickness: 3, edge: 5 }, "edge 5 mm is thicker than the blade, 3 mm"],
    [
      "part flat",
      { width: 40, thickness: 4, bevelHeight: 41 },
      "bevel height 41 mm is more than the width, 40 mm",
    ],
    ["part flat", { width: 40, thickness: 4 }, 'a "part flat" section needs a bevel height in mm'],
    [
      "flat",
      { width: 40, thickness: 4, bevelHeight: 18 },
      'takes no bevel height, 18 mm given: leave it blank, or use "part flat"',
    ],
    ["hollow", { width: 32, thickness: 4, edge: 0.5, bevelHeight: 16 }, "needs a wheel radius in mm"],
    [
      "hollow",
      { width: 32, thickness: 4, edge: 0.5, bevelHeight: 16, curve: 8 },
      "cannot hollow a bevel face 16.0954 mm wide",
    ],
    ["hollow", { width: 40, thickness: 3, edge: 0.3, curve: 60 }, "would grind through"],
    ["convex", { width: 40, thickness: 4 }, "needs a bulge in mm"],
    [
      "convex",
      { width: 40, thickness: 4, curve: 5 },
      "would make the blade thicker than its 4 mm: at most 0.5",
    ],
    ["lenticular", { width: 4, thickness: 6 }, "cannot be only 4 mm wide"],
    ["hexagonal", { width: 40, thickness: 5 }, "needs a flat width in mm"],
    ["hexagonal", { width: 40, thickness: 5, flatWidth: 41 }, "flat 41 mm is wider than the blade, 40 mm"],
    ["t-back", { width: 24, thickness: 2, flatWidth: 7 }, "needs a rib height in mm"],
    [
      "t-back",
      { width: 24, thickness: 2, flatWidth: 1, ribHeight: 6 },
      "rib width 1 mm is less than the thickness",
    ],
    ["rectangle", { width: 24, thickness: 2, edge: 0.4 }, "takes no edge thickness"],
    ["diamond", { width: 24, thickness: 2, curve: 3 }, "takes no radius or bulge"],
    ["flat", { width: -40, thickness: 3 }, "width -40: give a length in mm, from 0"],
    ["flat", { width: 40, thickness: Number.NaN }, "thickness NaN: give a length in mm, from 0"],
  ])("%s %o", (grind, sizes, sentence) => {
    expect(() => area(grind, sizes)).toThrow(sentence);
  });

  it("leaves a hollow ground to a sharp edge standing where the wheel is large enough", () => {
    // Full hollow 40 mm high to zero: the arc is parallel to the middle plane beyond the edge for a 2 m radius.
    expect(area("hollow", { width: 40, thickness: 4, curve: 1000 })).toBeLessThan(80);
  });
});

describe("grind words", () => {
  it.each([
    ["Full Flat", "flat"],
    ["SABRE", "part flat"],
    ["lens", "lenticular"],
    ["T back", "t-back"],
    ["hex", "hexagonal"],
    ["hollow-ground", "hollow"],
  ])("%s is %s", (given, word) => {
    expect(findGrind(given).word).toBe(word);
  });

  it("never guesses", () => {
    expect(() => findGrind("f")).toThrow('fits more than one grind: "flat"');
    expect(() => findGrind("holow")).toThrow('Nearest: "hollow"');
    expect(() => findGrind("")).toThrow("GRINDS() lists them all");
  });
});

it("the flattest segments are parabolas, two thirds of chord times height, down to the smallest number", () => {
  // Archimedes: the segment of a parabola. Found by the long fuzz: the square of the angle came to 0.
  for (const height of [1e-6, 1e-9, 1e-12, 1e-160, 1e-300]) {
    expect(segmentArea(3, height) / height / 2).toBeCloseTo(1, 9);
  }
  expect(segmentArea(1, 1e-323)).toBeLessThan(1e-300);
});
