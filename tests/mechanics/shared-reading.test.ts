import { describe, expect, test } from "vitest";
import type { WorksheetFunction } from "../../src/functions/declare";
import { BLADE_AT, FLEX, RING, THICKNESS_FOR_FLEX } from "../../src/functions/mechanics";
import { MASS, SET_RADIUS, STATIONS } from "../../src/functions/shape";
import { answer, first } from "../stock/call";

type Blade = readonly unknown[];

const none = (count: number) => Array<null>(count).fill(null);
/** x, width, thickness, grind, edge, density, bevel height, curve, fuller width, fuller depth */
const blade = (...given: Blade): Blade => [...given, ...none(10 - given.length)];

/** Every function that takes a blade by its stations, asked with figures that fit any blade. */
const ASKED: Readonly<Record<string, (given: Blade) => unknown>> = {
  STATIONS: (given) => first(STATIONS, ...given),
  FLEX: (given) => first(FLEX, ...given),
  RING: (given) => first(RING, ...given),
  THICKNESS_FOR_FLEX: (given) => first(THICKNESS_FOR_FLEX, ...given, 2),
  BLADE_AT: (given) => first(BLADE_AT, 10, ...given),
};

const BAD: readonly (readonly [string, Blade, RegExp])[] = [
  [
    "stations out of order",
    blade([[0], [300], [200]], 40, 5),
    /^#VALUE! station 3 at 200 mm does not lie beyond station 2/,
  ],
  ["one station", blade([[0]], 40, 5), /^#VALUE! 1 station given: a blade needs at least 2/],
  ["a width below nothing", blade([[0], [300]], -1, 5), /^#VALUE! station 1: width: -1 mm given/],
  ["a blade of eleven metres", blade([[0], [11_000]], 40, 5), /^#VALUE! station 2: x: 11000 mm given/],
  ["words for a thickness", blade([[0], [300]], 40, "thin"), /^#VALUE! station 1: thickness: "thin"/],
  ["no such grind", blade([[0], [300]], 40, 5, "wavy"), /wavy/],
  ["no metal", blade([[0], [300]], [[0], [0]], 5), /^#VALUE! the stations enclose no metal/],
  ["an edge thicker than the spine", blade([[0], [300]], 40, 5, "flat", 6), /^#VALUE! at 0 mm: .*edge/],
  [
    "a web thinner than nothing",
    blade([[0], [300]], 40, 5, "lenticular", null, null, null, null, 10, 3),
    /fullers 3 mm deep on both sides meet/,
  ],
  ["a density that is none", blade([[0], [300]], 40, 5, "flat", null, "1.2 g/cm3"), /^#VALUE! density/],
  ["an unknown steel", blade([[0], [300]], 40, 5, "flat", null, "Zzyx9"), /^#N\/A .*Zzyx9/],
];

describe.each(BAD)("%s", (_name, given, sentence) => {
  test("is refused by every function of a blade in the same words", () => {
    const answers = Object.values(ASKED).map((ask) => ask(given));
    expect(answers[0]).toMatch(sentence);
    expect(new Set(answers).size).toBe(1);
  });
});

test("the stations of every function are the same arguments, limits and defaults in the same order", () => {
  const told = (fn: WorksheetFunction) =>
    Object.entries(fn.parameters)
      .filter(([name]) => name in STATIONS.parameters)
      .map(([name, { label, accepts, fallbackText, unit }]) => [name, label, accepts, fallbackText, unit]);
  for (const fn of [FLEX, RING, THICKNESS_FOR_FLEX, BLADE_AT]) expect(told(fn)).toEqual(told(STATIONS));
});

test("a taper weighs the same by MASS and by its two stations, with the same refusals of its section", () => {
  const tapered = first(MASS, 800, 50, 6, "diamond", 20, 3);
  expect(tapered).toBeCloseTo(518.1, 6); // 66 000 mm³ × 7.85, worked in the examples of STATIONS
  const heel = (...given: unknown[]) => String(first(MASS, ...given)).replace(/^(#\S+ )at 0 mm: /, "$1");
  const atHeel = (...given: Blade) => String(first(STATIONS, ...given)).replace(/^(#\S+ )at 0 mm: /, "$1");
  expect(heel(300, 40, 5, "flat", null, null, 6)).toBe(atHeel([[0], [300]], 40, 5, "flat", 6));
});

test("STATIONS, FLEX, RING and BLADE_AT see one and the same metal", () => {
  const given = blade([[0], [400], [800]], [[45], [38], [20]], [[6], [4.5], [3]], "lenticular", null, 7.8);
  const [mass, here] = [first(STATIONS, ...given), first(BLADE_AT, 0, ...given)];
  expect(Number(mass)).toBeGreaterThan(0);
  expect(here).toBe(45);
});

test("the bend to a set rests on the modulus that FLEX has: a flat bar at the set is curved by SET_RADIUS", () => {
  const [hrc, thickness, length] = [50, 4, 40];
  const bar = blade([[0], [length]], 30, thickness, "rectangle");
  const setLoad = Number((evaluateRow(FLEX, ...bar, hrc) as number[])[5]);
  const stiffness = Number((evaluateRow(FLEX, ...bar, hrc) as number[])[1]);
  // At the held end M = F L and EI = stiffness L³ ÷ 3: radius = EI ÷ M; the bend is small, so the lever is L.
  const radius = (stiffness * length ** 3) / 3 / (setLoad * length);
  expect(radius / Number(first(SET_RADIUS, thickness, hrc))).toBeCloseTo(1, 2);
});

function evaluateRow(fn: WorksheetFunction, ...given: unknown[]): unknown[] {
  return answer(fn, ...given)[0] ?? [];
}
