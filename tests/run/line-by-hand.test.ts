import { describe, expect, test } from "vitest";
import { plan, totals } from "./run";

/*
 * Line L1 of the invented run R-07, worked here by hand: no expected figure comes from the code under test.
 * Order: 24 chef's knives of 52100; blank 346 × 50 × 3.0 mm from bars of 3000 mm, trim 10, kerf 1.2; steel 9.00 a kg;
 * labour 48 an hour, first blade 2.4 h, unit (Crawford) model at 95 %, set-up 5.5 h; belts 6.50 a start; fittings 11.00
 * and packing 2.20 a good one; energy 0.30 a kWh; overhead 17 an hour; margin 35 %. Seven pieces of 200 g a load.
 * Holding 10.8 kWh and tempering 4.8 kWh for four loads: 3.9 kWh a load.
 */
const GOOD = 24;
const YIELD = 0.92;

/** P(at least `good` of `starts`), term by term: the definition of the binomial distribution. */
function enough(starts: number): number {
  let sum = 0;
  for (let k = GOOD; k <= starts; k += 1) {
    let term = YIELD ** k * (1 - YIELD) ** (starts - k);
    for (let i = 1; i <= k; i += 1) term *= (starts - k + i) / i;
    sum += term;
  }
  return sum;
}

/** Specific heat of steel, EN 1993-1-2:2005, 3.4.1.2, J/(kg K). */
function specificHeat(t: number): number {
  if (t < 600) return 425 + 0.773 * t - 1.69e-3 * t ** 2 + 2.22e-6 * t ** 3;
  return t < 735 ? 666 + 13_002 / (738 - t) : 545 + 17_820 / (t - 731);
}

/** Heat from 20 to 845 °C in kJ/kg, by the midpoint rule in steps of 0.001 °C. */
function heatTo845(): number {
  const step = 1e-3;
  let sum = 0;
  for (let n = 0; n < 825 / step; n += 1) sum += specificHeat(20 + (n + 0.5) * step) * step;
  return sum / 1000;
}

const starts = 28;
/** (3000 - 10 + 1.2) / 347.2 = 8.615 pieces a bar; 28 / 8 = 3.5. */
const bars = 4;
/** 3000 × 50 × 3 mm³ at 7.85 g/cm³ is 3.5325 kg. */
const kilograms = bars * 3.5325;
/** Crawford: 2.4 h × n^(ln 0.95 / ln 2), summed over 28. */
const run = Array.from({ length: 28 }, (_, n) => 2.4 * (n + 1) ** (Math.log(0.95) / Math.LN2)).reduce(
  (sum, hours) => sum + hours,
  0,
);
const hours = run + 5.5;
const energy = (28 * 0.2 * heatTo845()) / 3600 / 0.25 + 10.8 + 4.8;
const cost = kilograms * 9 + hours * 48 + 6.5 * 28 + (11 + 2.2) * 24 + energy * 0.3 + hours * 17;

const L1 = {
  line: "L1",
  use: "Chef knife thin hard",
  // The heat's certificate: an analysis counts as low-alloy steel of 7.85 g/cm³; sheets of 52100 print 7.81.
  steel: "C 1.00 Si 0.24 Mn 0.34 Cr 1.45",
  good: GOOD,
  yield: YIELD,
  confidence: 0.9,
  length: 346,
  width: 50,
  thickness: 3,
  grind: "rectangle",
  quench: "medium oil",
  "harden C": 845,
  "bar length": 3000,
  kerf: 1.2,
  trim: 10,
  "price kg": 9,
  "price date": "2026-10-01",
  "hours first": 2.4,
  rate: 0.95,
  model: "Crawford",
  "set-up h": 5.5,
  "hour rate": 48,
  "overhead rate": 17,
  "cost a start": 6.5,
  "cost a good one": 13.2,
  "kWh price": 0.3,
  "harden g": 200,
  "pieces a load": 7,
  "hold kWh": 3.9,
  "oven h": 5,
  margin: 0.35,
};

describe("line L1 of run R-07", () => {
  const [line = {}] = plan([L1]);

  test("the hand figures agree with those written down for the run", () => {
    expect(enough(27)).toBeCloseTo(0.834214, 6);
    expect(enough(28)).toBeCloseTo(0.931387, 6);
    expect(run).toBeCloseTo(56.271, 3);
    expect(heatTo845()).toBeCloseTo(595.07, 2);
    expect(energy).toBeCloseTo(19.3, 2);
    expect(cost).toBeCloseTo(4646.88, 2);
    expect(cost / GOOD).toBeCloseTo(193.62, 2);
  });

  test.each([
    ["mass g", 407.415, 3],
    ["carbon %", 1, 9],
    ["starts", starts, 9],
    ["bars", bars, 9],
    ["use of bar %", (28 * 346 * 100) / 12_000, 9],
    ["kg", kilograms, 9],
    ["loads", 4, 9],
    ["kWh", energy, 4],
    ["hours", hours, 9],
    ["unit cost", cost / GOOD, 4],
    ["price", 297.88, 9],
    ["margin", 1 - cost / GOOD / 297.88, 6],
  ])("%s", (heading, wanted, digits) => {
    expect(line[heading]).toBeCloseTo(wanted, digits);
  });

  test("the totals of one line are the line", () => {
    const sums = totals([L1], 9, 30, 40);
    expect(sums.get("cost")?.[1]).toBeCloseTo(cost, 3);
    expect(sums.get("income")?.[1]).toBeCloseTo(24 * 297.88, 6);
    expect(sums.get("oven hours")?.[1]).toBe(20);
    // 61.77 h of bench at 30 h a week: 2.06 weeks; 9 × 30 - 61.77 = 208.2 h.
    expect(sums.get("bench time")?.[1]).toBeCloseTo(hours / 30, 9);
    expect(sums.get("bench time")?.[3]).toBe("fits 9 × 30 h with 208.2 h to spare");
  });
});
