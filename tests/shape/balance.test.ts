import { describe, expect, test } from "vitest";
import * as declared from "../../src/functions/shape";
import { answer, first, testExamples } from "../stock/call";

const { ASSEMBLY, EDGE_ANGLE, EDGE_BEVEL, FULLERED_AREA, GRIND_ANGLE, HOLLOW_DEPTH } = declared;
const { PERCUSSION_CENTRE, POMMEL, SET_RADIUS, SWING_INERTIA, WHEEL } = declared;

describe("examples of the declarations", () => {
  testExamples(declared);
});

describe("the worked sword: mass 1238.064 g, balance 102.346 mm, inertia 0.1078864 kg m²", () => {
  // By hand: square of the radius of gyration 87 141.27 mm²; partner = balance + 87 141.27 / (balance - held).
  test.each([
    [-40, 714.52],
    [-225, 368.55],
  ])("held at %d", (held, partner) => {
    expect(first(PERCUSSION_CENTRE, 1238.064, 102.346, 0.1078864, held)).toBeCloseTo(partner, 1);
  });

  test("a column of held points gives a column of partners", () => {
    expect(answer(PERCUSSION_CENTRE, 1238.064, 102.346, 0.1078864, [[0], [""], [-40]])).toEqual([
      [expect.closeTo(953.78, 1)],
      [""],
      [expect.closeTo(714.52, 1)],
    ]);
  });
});

describe("tables by hand", () => {
  // b = e / (2 tan a), f = e / (2 sin a), to four places.
  test.each([
    [0.2, 12, 0.4705, 0.481],
    [0.25, 15, 0.4665, 0.483],
    [0.5, 17, 0.8177, 0.8551],
    [0.5, 20, 0.6869, 0.731],
    [0.75, 20, 1.0303, 1.0964],
  ])("edge %d at %d° a side", (edge, angle, bevel, face) => {
    expect(first(EDGE_BEVEL, edge, angle)).toBeCloseTo(bevel, 4);
    expect(first(EDGE_ANGLE, edge, face)).toBeCloseTo(angle, 1);
  });

  // h = R - √(R² - 64), to four places.
  test.each([
    [4, 0.6339],
    [6, 0.4211],
    [8, 0.3155],
    [12, 0.2101],
    [14, 0.1801],
    [20, 0.126],
    [36, 0.07],
  ])("a %d in wheel over 16 mm", (inches, depth) => {
    expect(first(HOLLOW_DEPTH, `${inches} in`, 16)).toBeCloseTo(depth, 4);
    expect(first(WHEEL, 16, first(HOLLOW_DEPTH, inches * 25.4, 16))).toBeCloseTo(inches * 25.4, 6);
  });
});

describe("bad input", () => {
  test.each([
    [
      EDGE_BEVEL,
      [0.4, 50],
      /^#VALUE! angle a side: 50 ° given; was the included angle meant\? Then give half of it, 25 °/,
    ],
    [EDGE_ANGLE, [1, 0.4], /^#VALUE! face 0.4 mm is shorter than half the thickness behind the edge, 0.5 mm/],
    [GRIND_ANGLE, [45, 3, 4], /^#VALUE! edge 4 mm is thicker than the blade, 3 mm/],
    [HOLLOW_DEPTH, [10, 16], /^#VALUE! a wheel 10 mm across cannot grind a hollow 16 mm high/],
    [WHEEL, [16, 9], /^#VALUE! a hollow 16 mm high cannot be 9 mm deep/],
    [PERCUSSION_CENTRE, [1000, 300, 0.05, 300], /^#VALUE! held at 300 mm, which is the balance/],
    [
      POMMEL,
      [978, 189, -225, 250],
      /^#VALUE! wanted balance 250 mm cannot be reached: a pommel at -225 mm moves it only between -225 mm and 189 mm/,
    ],
    [
      SWING_INERTIA,
      [1000, 500, 1.2],
      /^#VALUE! period 1.2 s is too short for a pivot 500 mm from the balance/,
    ],
    [SET_RADIUS, [4, 60], /^#N\/A hardness 60 HRC is outside 20 HRC to 58 HRC/],
    [
      FULLERED_AREA,
      ["hollow", 40, 4, 10, 1],
      /^#VALUE! grind "hollow" given; give flat, rectangle, lenticular, diamond. For other grinds use STATIONS/,
    ],
    [FULLERED_AREA, ["lenticular", 45, 5.5, 14, 3], /^#VALUE! fullers 3 mm deep on both sides meet/],
    [
      FULLERED_AREA,
      ["lenticular", 45, 5.5, 14, 0.2, 1, 2, "crown"],
      /^#VALUE! fuller depth 0.2 mm from the crown does not reach below it/,
    ],
    [
      FULLERED_AREA,
      ["lenticular", 45, 5.5, 14, 1.2, 4],
      /^#VALUE! 4 fullers of 14 mm do not fit side by side on 45 mm/,
    ],
    [
      FULLERED_AREA,
      ["lenticular", 45, 5.5, 14, 1.2, 3],
      /^#VALUE! the outer fullers, 1.2 mm deep, cut through/,
    ],
    [
      FULLERED_AREA,
      ["lenticular", 45, 5.5, 14, 1.2, 1, 2, "spine"],
      /^#VALUE! datum "spine" given; give "chord" or "crown"/,
    ],
    [
      ASSEMBLY,
      [
        [[100], [-5]],
        [[0], [10]],
      ],
      /^#VALUE! station 2: mass g: -5 g given/,
    ],
  ] as const)("%o %j", (fn, given, sentence) => {
    expect(first(fn, ...given)).toMatch(sentence);
  });
});
