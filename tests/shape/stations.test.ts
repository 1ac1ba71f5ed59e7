import { double, assert as holds, integer, property, tuple } from "fast-check";
import { describe, expect, it } from "vitest";
import { fullerArea } from "../../src/core/shape/fuller";
import { gaussRule } from "../../src/core/shape/gauss";
import { findGrind, type GrindWord } from "../../src/core/shape/grinds";
import { outlineOf } from "../../src/core/shape/section";
import { bladeProperties, type Station } from "../../src/core/shape/stations";
import { taperedBlade } from "../../src/core/shape/taper";

const STEEL = 7.85;
const diamond = findGrind("diamond");

function stations(grind: string, rows: readonly Omit<Station, "grind">[]): Station[] {
  return rows.map((row) => ({ grind: findGrind(grind), ...row }));
}

describe("worked blades", () => {
  it("may step by a thousandth of a millimetre, wherever along the blade", () => {
    const step = [
      { x: 300, width: 30, thickness: 4 },
      { x: 300.001, width: 30, thickness: 4 },
    ];
    expect(bladeProperties(stations("rectangle", step), STEEL).volume).toBeCloseTo(0.12, 9);
  });

  // Diamond 50 × 6 to 20 × 3 over 800 mm: A(s) = 150 - 165 s + 45 s², integrated by hand.
  const taper = { grind: diamond, length: 800, width: 50, thickness: 6, tipWidth: 20, tipThickness: 3 };

  it("integrate width times thickness, not the mean of the ends (72 000) nor the middle (63 000)", () => {
    const blade = taperedBlade(taper, STEEL);
    expect(blade.volume).toBeCloseTo(66_000, 8);
    expect(blade.mass).toBeCloseTo(518.1, 8);
    // V1 = 640 000 × 31.25 = 20 000 000; 20 000 000 / 66 000.
    expect(blade.balance).toBeCloseTo(20_000_000 / 66_000, 8);
    // About the thick end 512e6 × 17.75 mm⁵ × 7.85e-3 g/mm³ = 0.0713408 kg m².
    expect(blade.inertia + blade.mass * 1e-9 * blade.balance ** 2).toBeCloseTo(0.0713408, 7);
    expect(blade.inertia).toBeCloseTo(0.023765, 7);
  });

  it("do not depend on where the blade is divided or where x starts", () => {
    const whole = taperedBlade(taper, STEEL);
    const rows = [0, 120, 500, 800].map((x) => ({
      x: x - 65,
      width: 50 - (30 * x) / 800,
      thickness: 6 - (3 * x) / 800,
    }));
    const parts = bladeProperties(stations("diamond", rows), STEEL);
    expect(parts.volume / whole.volume).toBeCloseTo(1, 12);
    expect(parts.balance + 65).toBeCloseTo(whole.balance, 9);
    expect(parts.inertia / whole.inertia).toBeCloseTo(1, 12);
  });

  it("give a full-flat kitchen knife its 70 g, not the 206 g of length × width × thickness", () => {
    // Panels by the prismatoid rule, by hand: 4443.25 + 3601.20 + 881.00 mm³.
    const knife = bladeProperties(
      stations("flat", [
        { x: 0, width: 48, thickness: 2.6, edge: 0.25 },
        { x: 70, width: 46, thickness: 2.3, edge: 0.25 },
        { x: 150, width: 34, thickness: 1.7, edge: 0.22 },
        { x: 210, width: 2, thickness: 0.9, edge: 0.2 },
      ]),
      STEEL,
    );
    expect(knife.volume).toBeCloseTo(8925.45, 8);
    expect(knife.mass).toBeCloseTo(70.065, 3);
    expect(knife.balance).toBeCloseTo(76.513, 3);
  });

  it("bring a sword to its point", () => {
    // Diamond panels by hand: 52 312.5 + 24 266.667 + 641.667 mm³.
    const sword = bladeProperties(
      stations("diamond", [
        { x: 0, width: 50, thickness: 6 },
        { x: 450, width: 38, thickness: 4.5 },
        { x: 850, width: 22, thickness: 3.5 },
        { x: 900, width: 0, thickness: 0 },
      ]),
      STEEL,
    );
    expect(sword.volume).toBeCloseTo(77_220.833, 3);
    expect(sword.mass).toBeCloseTo(606.184, 3);
    expect(sword.balance).toBeCloseTo(341.643, 3);
    expect(sword.inertia).toBeCloseTo(0.0335543, 7);
  });

  it("weigh a bar as length × width × thickness", () => {
    const bar = taperedBlade({ grind: findGrind("rectangle"), length: 300, width: 40, thickness: 5 }, STEEL);
    expect(bar.volume).toBeCloseTo(60_000, 9);
    expect(bar.balance).toBeCloseTo(150, 10);
    // Slender rod about its middle: m l² / 12.
    expect(bar.inertia).toBeCloseTo((0.471 * 0.3 ** 2) / 12, 10);
  });
});

const size = (min: number, max: number) => double({ min, max, noNaN: true });
const end = tuple(size(5, 60), size(1, 8));

/** Tanh-sinh quadrature: independent of the Gauss rules under test, good to about 1e-13 for smooth areas. */
function tanhSinh(area: (x: number) => number, length: number): number {
  const step = 1 / 64;
  let sum = 0;
  for (let k = -256; k <= 256; k += 1) {
    const t = k * step;
    const u = (Math.PI / 2) * Math.sinh(t);
    const weight = ((Math.PI / 2) * Math.cosh(t)) / Math.cosh(u) ** 2;
    const x = (length / 2) * (1 + Math.tanh(u));
    if (x > 0 && x < length) sum += weight * area(x);
  }
  return (sum * step * length) / 2;
}

describe("random blades", () => {
  it.each<[GrindWord, number]>([
    ["rectangle", 1],
    ["diamond", 0.5],
    ["flat", 0.5],
  ])("%s: closed polynomials of k·w·t to 1e-9", (grind, k) => {
    holds(
      property(end, end, size(50, 1000), ([w0, t0], [w1, t1], length) => {
        const blade = bladeProperties(
          stations(grind, [
            { x: 0, width: w0, thickness: t0 },
            { x: length, width: w1, thickness: t1 },
          ]),
          STEEL,
        );
        // A = a + b s + c s², s from 0 to 1: moments a + b/2 + c/3, a/2 + b/3 + c/4, a/3 + b/4 + c/5.
        const [a, b, c] = [w0 * t0, w0 * (t1 - t0) + t0 * (w1 - w0), (w1 - w0) * (t1 - t0)];
        const volume = k * length * (a + b / 2 + c / 3);
        const first = k * length ** 2 * (a / 2 + b / 3 + c / 4);
        const second = k * length ** 3 * (a / 3 + b / 4 + c / 5);
        const inertia = (second - first ** 2 / volume) * STEEL * 1e-12;
        expect(Math.abs(blade.volume / volume - 1)).toBeLessThan(1e-9);
        expect(Math.abs(blade.balance / (first / volume) - 1)).toBeLessThan(1e-9);
        expect(Math.abs(blade.inertia / inertia - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it("lenticular: tanh-sinh of the school formula to 1e-9", () => {
    holds(
      property(tuple(size(20, 60), size(2, 8)), tuple(size(10, 60), size(1, 4)), ([w0, t0], [w1, t1]) => {
        const area = (x: number) => {
          const [c, h] = [w0 + ((w1 - w0) * x) / 700, (t0 + ((t1 - t0) * x) / 700) / 2];
          const radius = (c ** 2 / 4 + h ** 2) / (2 * h);
          return 2 * (radius ** 2 * Math.acos(1 - h / radius) - ((radius - h) * c) / 2);
        };
        const rows = [
          { x: 0, width: w0, thickness: t0 },
          { x: 700, width: w1, thickness: t1 },
        ];
        const volume = bladeProperties(stations("lenticular", rows), STEEL).volume;
        expect(Math.abs(volume / tanhSinh(area, 700) - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it("hollow with fullers above the bevel: tanh-sinh to 1e-9", () => {
    holds(
      property(integer({ min: 30, max: 45 }), size(3.5, 6), size(80, 400), (width, thickness, radius) => {
        const segment = (c: number, h: number) => {
          const r = (c ** 2 / 4 + h ** 2) / (2 * h);
          return r ** 2 * Math.acos(1 - h / r) - ((r - h) * c) / 2;
        };
        const area = (x: number) => {
          const [t, d] = [thickness - (1.2 * x) / 300, 0.8 - (0.5 * x) / 300];
          const c = Math.hypot(14, (t - 0.5) / 2);
          const h = radius - Math.sqrt(radius ** 2 - c ** 2 / 4);
          return t * (width - 14) + 7 * (t + 0.5) - 2 * segment(c, h) - 2 * segment(8, d);
        };
        const common = { width, edge: 0.5, bevelHeight: 14, curve: radius };
        const rows = [
          { x: 0, thickness, ...common, fuller: { width: 8, depth: 0.8 } },
          { x: 300, thickness: thickness - 1.2, ...common, fuller: { width: 8, depth: 0.3 } },
        ];
        const volume = bladeProperties(stations("hollow", rows), STEEL).volume;
        expect(Math.abs(volume / tanhSinh(area, 300) - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it("tapers of every grind keep their balance between heel and tip", () => {
    const extra: Partial<Record<GrindWord, object>> = {
      "part flat": { bevelHeight: 9 },
      hollow: { curve: 300, bevelHeight: 9 },
      convex: { curve: 0.2 },
      hexagonal: { flatWidth: 8 },
    };
    const words: GrindWord[] = [
      "flat",
      "part flat",
      "chisel",
      "hollow",
      "convex",
      "lenticular",
      "diamond",
      "hexagonal",
    ];
    for (const word of words) {
      const taper = {
        grind: findGrind(word),
        length: 200,
        width: 30,
        thickness: 3,
        tipWidth: 6,
        tipThickness: 1,
        edge: 0.3,
      };
      const blade = taperedBlade({ ...taper, ...extra[word] }, STEEL);
      expect(blade.volume).toBeGreaterThan(0);
      expect(blade.balance).toBeGreaterThan(0);
      expect(blade.balance).toBeLessThan(100);
    }
  });
});

describe("points", () => {
  it("end in nothing wherever the last station lies", () => {
    // Diamond pyramid: a third of base area × length.
    holds(
      property(size(-100, 900), size(0.1, 400), end, (from, length, [width, thickness]) => {
        const rows = [
          { x: from, width, thickness },
          { x: from + length, width: 0, thickness: 0 },
        ];
        const { volume } = bladeProperties(stations("diamond", rows), STEEL);
        const exact = (width * thickness * (from + length - from)) / 6;
        expect(Math.abs(volume / exact - 1)).toBeLessThan(1e-12);
      }),
    );
  });
});

describe("fullers", () => {
  // Segment of chord 14 and height 1.2: 11.26555; crown of the lens (R 93.4205) 2.45185, of the ridge 14² × 5.5 / (4 × 45).
  it.each([
    ["lenticular", 165.4919 - 138.0571],
    ["diamond", 123.75 - 89.2411],
    ["flat", 2 * 11.26555],
  ])("take the crown with them on a %s section", (grind, expected) => {
    const outline = outlineOf({ grind: findGrind(grind), width: 45, thickness: 5.5 });
    expect(2 * fullerArea(outline, { width: 14, depth: 1.2 })).toBeCloseTo(expected, 4);
  });

  it.each([
    ["diamond", { width: 14, depth: 2.5 }, "on both sides meet"],
    ["diamond", { width: 46, depth: 1 }, "does not fit"],
    ["diamond", { width: 2, depth: 1.1 }, "more than half its width"],
    ["diamond", { width: 14, depth: 0 }, "needs both a width and a depth"],
  ])("are refused on a %s section: %o", (grind, fuller, sentence) => {
    const outline = outlineOf({ grind: findGrind(grind), width: 45, thickness: 5.5 });
    expect(() => fullerArea(outline, fuller)).toThrow(sentence);
  });
});

describe("bad stations", () => {
  it.each<[string, Omit<Station, "grind">[], string]>([
    ["diamond", [{ x: 0, width: 50, thickness: 6 }], "1 station given: a blade needs at least 2"],
    [
      "diamond",
      [
        { x: 0, width: 50, thickness: 6 },
        { x: 0, width: 50, thickness: 6 },
      ],
      "station 2 at 0 mm does not lie beyond station 1",
    ],
    [
      "diamond",
      [
        { x: 10, width: 50, thickness: 6 },
        { x: 5, width: 50, thickness: 6 },
      ],
      "in order from heel to tip",
    ],
    // Found by the fuzz: a blade of no length to speak of swings at an infinite frequency.
    [
      "rectangle",
      [
        { x: 0, width: 30, thickness: 4 },
        { x: 5e-324, width: 30, thickness: 4 },
      ],
      "0.001 mm or more apart",
    ],
    [
      "flat",
      [
        { x: 0, width: 50, thickness: 6, edge: 0.4 },
        { x: 90, width: 5, thickness: 0.2, edge: 0.4 },
      ],
      "at 90 mm: edge 0.4 mm is thicker",
    ],
    [
      "diamond",
      [
        { x: 0, width: 0, thickness: 6 },
        { x: 9, width: 0, thickness: 6 },
      ],
      "enclose no metal",
    ],
  ])("%s %o", (grind, rows, sentence) => {
    expect(() => bladeProperties(stations(grind, rows), STEEL)).toThrow(sentence);
  });
});

describe("Gauss rules", () => {
  it("have the published points and weights for n = 3 (Abramowitz and Stegun 25.4.30, from memory)", () => {
    const { points, weights } = gaussRule(3);
    [(1 - Math.sqrt(0.6)) / 2, 0.5, (1 + Math.sqrt(0.6)) / 2].forEach((point, i) => {
      expect(points[i]).toBeCloseTo(point, 15);
    });
    [5 / 18, 8 / 18, 5 / 18].forEach((weight, i) => {
      expect(weights[i]).toBeCloseTo(weight, 15);
    });
  });

  it("integrate powers exactly up to degree 2n - 1", () => {
    for (const n of [3, 12]) {
      const { points, weights } = gaussRule(n);
      for (let degree = 0; degree < 2 * n; degree += 1) {
        const sum = points.reduce((total, point, i) => total + (weights[i] ?? 0) * point ** degree, 0);
        expect(sum).toBeCloseTo(1 / (degree + 1), 14);
      }
    }
  });
});
