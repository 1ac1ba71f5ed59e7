import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { temperPlan } from "../../src/core/tempering/temper-plan";
import { temperedHardness } from "../../src/core/tempering/tempered";

const HOURS = { hours: 2, cycles: 1 } as const;
const plan = (steel: string, target: number, more: object = {}) =>
  temperPlan(findSteel(steel), target, { ...HOURS, ...more });
const published = (steel: string, celsius: number) => temperedHardness(findSteel(steel), celsius, HOURS);

describe("one answer", () => {
  const { startC, likelyC, highC, flag, hrcCooler, hrcHotter, caution } = plan(
    "1084",
    published("1084", 200),
  );

  test("the temper that gives the target, ten degrees to either side, and a start that may already give it", () => {
    expect(flag).toBe("one answer");
    expect(likelyC).toBeCloseTo(200, 6);
    expect(hrcCooler).toBeCloseTo(published("1084", 190), 6);
    expect(hrcHotter).toBeCloseTo(published("1084", 210), 6);
    // The half-width of the curve, 2.5 HRC: the start gives the target at the soft end of the band.
    expect(published("1084", startC as number)).toBeCloseTo(published("1084", 200) + 2.5, 6);
    expect(published("1084", highC as number)).toBeCloseTo(published("1084", 200) - 2.5, 6);
  });

  test("the advice names both and the cautions follow it", () => {
    expect(caution).toMatch(/^±2\.5 HRC: begin at the start, read, step up; taken as/);
    expect(caution).not.toMatch(/; ;|; $/);
  });

  test("a reading of the blade moves all of it", () => {
    const known = { celsius: 200, hrc: published("1084", 200) + 1 };
    const moved = plan("1084", published("1084", 200), { known });
    expect(published("1084", moved.likelyC as number) + 1).toBeCloseTo(published("1084", 200), 6);
    expect(moved.hrcCooler).toBeCloseTo(published("1084", (moved.likelyC as number) - 10) + 1, 6);
    // A known reading of the same steel: ±2 HRC.
    expect(published("1084", moved.startC as number) + 1).toBeCloseTo(published("1084", 200) + 2, 6);
  });
});

describe("no answer, and why", () => {
  test("softer than the end of the table", () => {
    // W2 ends at 315.6 °C with 55 HRC.
    const soft = plan("W2", 40);
    expect(soft).toMatchObject({ flag: "out of reach", startC: null, likelyC: null, highC: null });
    expect(soft.caution).toMatch(
      /^40 HRC in W2 is out of reach: the lowest is 55\.0 HRC, at 315 °C \(599 °F\), the end/,
    );
  });

  test("harder than any temper that takes the stress out, but given by a cooler one", () => {
    const hardest = published("1084", 150);
    const cool = plan("1084", (hardest + published("1084", 110)) / 2);
    expect(cool.flag).toBe("below usual temper");
    expect(cool.caution).toContain(`the highest from 150 °C (302 °F) up is ${hardest.toFixed(1)} HRC`);
  });

  test("harder than the steel gets", () => {
    const hard = plan("1045", 66);
    expect(hard.flag).toBe("out of reach");
    expect(hard.caution).toContain("choose a softer target or a steel with more carbon");
    // A reading under the curve lowers what can be had, one over it raises it.
    const known = (off: number) => ({ known: { celsius: 200, hrc: published("1084", 200) + off } });
    const highest = (off: number) =>
      Number(/up is ([\d.]+) HRC/.exec(plan("1084", 68, known(off)).caution)?.[1]);
    expect(highest(1.5) - highest(-1.5)).toBeCloseTo(3, 1);
  });
});

describe("more than one answer", () => {
  test("two tempers with a harder stretch between: the cooler is likely, both are named", () => {
    // H13 hardens again in tempering: its table rises to a peak about 500 °C.
    const { flag, caution, likelyC, startC, highC, hrcHotter } = plan("H13", 55);
    expect(flag).toBe("two answers");
    const [, cooler, hotter] =
      /^two tempers give it, (\d+) °C .* and (\d+) °C .*: lean to the cooler/.exec(caution) ?? [];
    expect(Number(cooler)).toBe(Math.round(likelyC as number));
    for (const celsius of [cooler, hotter])
      expect(Math.abs(published("H13", Number(celsius)) - 55)).toBeLessThan(0.05);
    expect(Number(hotter) - Number(cooler)).toBeGreaterThan(50);
    expect(startC as number).toBeLessThan(likelyC as number);
    expect(highC as number).toBeGreaterThan(Number(hotter));
    expect(hrcHotter as number).toBeGreaterThan(55);
  });

  test("a plateau: one point over 55 °C or more", () => {
    // 440C reads 56 HRC at 316, 371 and 427 °C after its 1 h.
    const { flag, caution } = plan("440C", 56, { hours: 1 });
    expect(flag).toBe("plateau");
    expect(caution).toMatch(/^hardness hardly moves from \d+ °C .* to \d+ °C .*: lean to the cooler/);
  });

  test("in the brittle range: both neighbours with what they give, rounded", () => {
    const { flag, caution } = plan("1084", published("1084", 300));
    expect(flag).toBe("embrittlement range");
    const softer = Math.round(published("1084", 375));
    const harder = Math.round(published("1084", 225));
    expect(caution).toContain(
      `; softer: 375 °C (707 °F) about ${softer} HRC; harder: 225 °C (437 °F) about ${harder} HRC`,
    );
    // 5160 must cool fast from 375 °C.
    expect(plan("5160", published("5160", 300)).caution).toContain("375 °C (707 °F), cooled fast, about");
  });

  test("where the published range ends inside the brittle one, only the harder neighbour is offered", () => {
    // W2 ends at 315.6 °C.
    const w2 = plan("W2", 57);
    expect(w2.flag).toBe("embrittlement range");
    expect(w2.caution).not.toContain("softer:");
    expect(w2.caution).toContain("harder: 225 °C");
  });
});
