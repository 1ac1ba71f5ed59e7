import { describe, expect, test } from "vitest";
import * as mechanics from "../../src/functions/mechanics";
import { STATIONS } from "../../src/functions/shape";
import { answer, first, testExamples } from "../stock/call";

const { BLADE_AT, EDGE_FOR_LOAD, EDGE_LOAD, FLEX, RING, THICKNESS_FOR_FLEX } = mechanics;

describe("examples of the declarations", () => {
  testExamples(mechanics);
});

const X = [[0], [200], [400], [600], [780]];
const WIDTH = [[50], [45], [39], [31], [20]];
const THICKNESS = [[6], [5.2], [4.4], [3.8], [3]];
const SWORD = [X, WIDTH, THICKNESS, "diamond", null, "5160", null, null, null, null] as const;

describe("FLEX", () => {
  test("without a load gives the stiffness and the set, without a hardness no set", () => {
    const [row = []] = answer(FLEX, ...SWORD, 52, null, 760);
    expect(row.slice(2, 5)).toEqual(["", "", ""]);
    expect(row[0]).toBe("");
    expect(row[5]).toEqual(expect.any(Number));
    expect(Number(row[8])).toBeLessThan(Number(row[5]));
    expect(Number(row[9])).toBeGreaterThan(Number(row[5]));
    expect(answer(FLEX, ...SWORD, null, 20, 760)[0]?.slice(5, 12)).toEqual(Array(7).fill(""));
  });

  test("a load beyond the set says at what share it sets, and gives no figure past it", () => {
    const [row = []] = answer(FLEX, ...SWORD, 52, null, 760);
    const [over = []] = answer(FLEX, ...SWORD, 52, 2 * Number(row[5]), 760);
    expect(over[0]).toBe("takes a set at 0.5 of this load");
    expect(over[2]).toBe("");
    expect(over[4]).toBe("over 1");
    expect(over[5]).toBe(row[5]);
  });

  test.each([
    [
      "load beyond the tip",
      [52, 20, 900],
      /load at: 900 mm given; give a place on the blade, 0 mm to 780 mm/,
    ],
    ["held beyond the load", [52, 20, 300, 400], /must lie beyond the place where the blade is held/],
    ["hardness outside the relation", [12, 20, 760], /HRC 12 is outside/],
    ["no force", [52, "heavy", 760], /load N: "heavy"/],
  ])("%s", (_name, rest, sentence) => {
    const [row = []] = answer(FLEX, ...SWORD, ...rest);
    expect(row[0]).toMatch(sentence);
  });

  test("stations out of order and a web thinner than nothing", () => {
    expect(first(FLEX, [[0], [300], [200]], 40, 5)).toMatch(/does not lie beyond station 2/);
    expect(first(FLEX, [[0], [300]], 40, 5, "lenticular", null, null, null, null, 10, 3)).toMatch(
      /fullers 3 mm deep on both sides meet/,
    );
  });

  test("a point cannot be loaded", () => {
    expect(
      first(FLEX, [[0], [300]], [[40], [0]], [[5], [0]], "diamond", ...Array(6).fill(null), 52, 10),
    ).toMatch(/comes to nothing/);
  });

  test("a force may state its unit", () => {
    expect(first(FLEX, ...SWORD, 52, "1 kgf", 760)).toBeCloseTo(
      Number(first(FLEX, ...SWORD, 52, 9.80665, 760)),
      9,
    );
  });
});

describe("RING", () => {
  test("takes the fittings as columns and skips their empty rows", () => {
    const bare = answer(RING, ...SWORD)[0] ?? [];
    const fitted = answer(RING, ...SWORD, [[180], [null], [260]], [[-10], [null], [-160]])[0] ?? [];
    expect(Number(fitted[0])).toBeLessThan(Number(bare[0]));
    expect(Number(fitted[1])).toBeLessThan(Number(bare[1]));
  });

  test("a fitting without a place", () => {
    expect(first(RING, ...SWORD, [[180]])).toMatch(/fitting 1 of 180 g has no place/);
  });
});

describe("EDGE_LOAD and EDGE_FOR_LOAD", () => {
  test("harder, blunter and thicker edges stand more; the inverse gives the edge back", () => {
    const load = (hrc: number, behind: number, angle: number) =>
      (answer(EDGE_LOAD, hrc, behind, angle)[0] ?? []).map(Number);
    expect(load(56, 0.4, 15)[0]).toBeGreaterThan(load(50, 0.4, 15)[0] as number);
    expect(load(56, 0.4, 20)[0]).toBeGreaterThan(load(56, 0.4, 15)[0] as number);
    expect(load(56, 0.6, 15)[3]).toBeGreaterThan(load(56, 0.4, 15)[3] as number);
    expect(first(EDGE_FOR_LOAD, 56, load(56, 0.4, 15)[3], 15)).toBeCloseTo(0.4, 9);
  });

  test("an included angle is asked about, a contact deeper than the bevel refused", () => {
    expect(first(EDGE_LOAD, 56, 0.4, 60)).toMatch(/was the included angle meant\? Half of it is 30 °/);
    expect(first(EDGE_LOAD, 56, 0.05, 20, 0.2)).toMatch(/deeper than the bevel/);
  });
});

describe("BLADE_AT", () => {
  test("the mass to the tip from the heel is the mass of STATIONS, and a column of places gives a row each", () => {
    const mass = Number(answer(STATIONS, ...SWORD)[0]?.[1]);
    const rows = answer(BLADE_AT, [[0], [390], [780], [900]], ...SWORD);
    expect(rows[0]?.[4]).toBeCloseTo(mass, 9);
    expect(rows[2]?.[4]).toBe(0);
    expect(rows[1]?.slice(0, 2)).toEqual([expect.closeTo(39.3, 9), expect.closeTo(4.44, 9)]);
    expect(rows[3]?.[0]).toMatch(/at: 900 mm given/);
  });

  test("the masses of two parts make the whole, with fullers and arcs", () => {
    const lens = [
      X,
      WIDTH,
      THICKNESS,
      "lenticular",
      null,
      null,
      null,
      null,
      [[12], [10], [8], [0], [0]],
      [[0.8], [0.6], [0.4], [0], [0]],
    ];
    const whole = Number(answer(STATIONS, ...lens)[0]?.[1]);
    const beyond = Number(answer(BLADE_AT, 300, ...lens)[0]?.[4]);
    expect(beyond).toBeGreaterThan(0);
    expect(beyond).toBeLessThan(whole);
    expect(Number(answer(BLADE_AT, 0, ...lens)[0]?.[4])).toBeCloseTo(whole, 6);
  });
});

describe("the other functions refuse the same places and hardnesses", () => {
  test.each([
    ["load beyond the tip", THICKNESS_FOR_FLEX, [...SWORD, 2, 900], /load at: 900 mm given; give a place/],
    [
      "held off the blade",
      THICKNESS_FOR_FLEX,
      [...SWORD, 2, 700, -20],
      /held at: -20 mm given; give a place/,
    ],
    ["held beyond the load", THICKNESS_FOR_FLEX, [...SWORD, 2, 300, 400], /must lie beyond the place where/],
    ["held off the blade", FLEX, [...SWORD, 52, 20, 700, 800], /held at: 800 mm given; give a place/],
    ["too soft for the yield relation", EDGE_LOAD, [12, 0.4, 15], /HRC 12 is outside/],
    ["too soft for the yield relation", EDGE_FOR_LOAD, [12, 50, 15], /HRC 12 is outside/],
    ["too hard to be a hardness", FLEX, [...SWORD, 71], /HRC: 71 HRC given; give a Rockwell C hardness/],
    ["tempered too cool to be known", FLEX, [...SWORD, 52, null, 760, null, 60], /temper 60 °C .*is outside/],
    ["a temper below nothing", EDGE_LOAD, [52, 0.4, 15, null, -5], /temper C: -5 °C/],
    ["behind the edge 0", EDGE_LOAD, [52, 0.001, 15], /behind edge mm: 0.001 mm given/],
    ["a load no edge bears", EDGE_FOR_LOAD, [52, 9e4, 15], /would need over 10 mm behind the edge/],
    ["a load below the thinnest bevel", EDGE_FOR_LOAD, [52, 0.5, 15], /borne by a bevel no higher/],
    ["a mass below nothing", RING, [...SWORD, -5, 0], /fitting mass g: -5 g given/],
  ] as const)("%s", (_name, fn, given, sentence) => {
    const said = String(first(fn, ...given));
    expect(said).toMatch(sentence);
    expect(said.match(/[a-z]{2,}/gi)?.length).toBeLessThanOrEqual(40);
  });
});

test("THICKNESS_FOR_FLEX asks for the stiffness and says where no thickness gives it", () => {
  expect(first(THICKNESS_FOR_FLEX, ...SWORD)).toMatch(/stiffness: nothing given/);
  expect(first(THICKNESS_FOR_FLEX, ...SWORD, 500, 760)).toMatch(/no thickness from a quarter to four times/);
});

test("a blade tempered low takes its set earlier than its hardness says", () => {
  const at = (temper: number) => Number(answer(FLEX, ...SWORD, 56, null, 760, null, temper)[0]?.[5]);
  expect(at(150)).toBeLessThan(at(250));
  expect(first(EDGE_LOAD, 56, 0.4, 15, null, 150)).toBeLessThan(
    Number(first(EDGE_LOAD, 56, 0.4, 15, null, 250)),
  );
});

test.each([1e-300, 5e-324, 1e-9])("a size of %d is refused with a sentence, never a fault", (tiny) => {
  for (const fn of [FLEX, RING, BLADE_AT, THICKNESS_FOR_FLEX]) {
    for (const at of [1, 2]) {
      const given = SWORD.map((value, index) => (index === at ? tiny : value));
      const rest = fn === THICKNESS_FOR_FLEX ? [2] : [];
      const sentence = fn === BLADE_AT ? first(fn, 100, ...given) : first(fn, ...given, ...rest);
      expect(sentence).toMatch(/#VALUE! the blade is at most/);
    }
  }
  expect(first(RING, [[0], [100], [200]], [[30], [tiny], [30]], 3)).toMatch(
    /comes to nothing between its ends/,
  );
});
