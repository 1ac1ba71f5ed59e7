import { beforeAll, describe, expect, test } from "vitest";
import type { CalculatedWorkbook } from "../../src/engine/calculate-workbook";
import { FLEX, RING } from "../../src/functions/mechanics";
import { FIGURE, swordRows } from "../../src/workbook/sheets/demo/balance-sheet";
import { demoWorkbook } from "../../src/workbook/sheets/demo/demo-workbook";
import { demoRun } from "../../src/workbook/sheets/run-r07/run";
import swords from "../../src/workbook/sheets/run-r07/swords.json";
import { answer } from "../stock/call";
import { calculated, changed, shownIn } from "./demo";

const demo = demoWorkbook();
let workbook: CalculatedWorkbook;

beforeAll(async () => {
  workbook = await calculated(demo);
}, 60_000);

const shown = (sheet: string, at: number, column: number, of = workbook) => shownIn(of, sheet, at, column);

function row(sheet: string, at: number, from: number, count: number, of = workbook) {
  return Array.from({ length: count }, (_, index) => shown(sheet, at, from + index, of));
}

describe("balance", () => {
  // Sums by hand over the parts: blade from its panels, bars as m·l²/12, the pommel as 0.4·m·r²;
  // the partner of the hand 40 mm behind the guard is X + k²/(X + 40).
  test("the worked example comes to its figures", () => {
    const { blade, whole, partner, effective, pommel } = swordRows(2);
    const [volume, mass, balance, inertia] = row("Balance", blade, 0, 4).map(Number);
    expect(volume).toBeCloseTo(77_220.833, 2);
    expect(mass).toBeCloseTo(606.184, 2);
    expect(balance).toBeCloseTo(341.643, 2);
    expect(inertia).toBeCloseTo(0.0335543, 6);
    const [g, mm, kgm2] = row("Balance", whole, FIGURE, 3).map(Number);
    expect(g).toBeCloseTo(1238.064, 2);
    expect(mm).toBeCloseTo(102.346, 2);
    expect(kgm2).toBeCloseTo(0.1078864, 6);
    expect(shown("Balance", partner, FIGURE)).toBeCloseTo(714.52, 1);
    expect(shown("Balance", effective, FIGURE)).toBeCloseTo(278.7, 1);
    expect(shown("Balance", pommel, FIGURE)).toBeCloseTo(268.94, 1);
  });

  // The figures of the functions, asked of the same stations: what stands in the sheet is what they answer.
  test.each(swords.swords.map((sword, index) => [sword.name, sword, index] as const))(
    "%s: bending, ringing and quiet points stand beside the balance",
    (_name, { steel, grind, hrc, stations, parts }, index) => {
      const rows = swordRows(index);
      const column = (at: number) => stations.map((station) => [station[at]]);
      const blade = [column(0), column(1), column(2), grind, null, steel, null, null, null, null];
      const tip = Number(stations.at(-1)?.[0]);
      const flex = answer(FLEX, ...blade, hrc, null, 0.9 * tip)[0] ?? [];
      expect(row("Balance", rows.flex, 0, 4)).toEqual([1, 5, 6, 7].map((at) => flex[at]));
      const inertia = ([, form, size = 0, mass = 0]: readonly unknown[]) =>
        (Number(mass) / 1000) * (Number(size) / 1000) ** 2 * (form === "ball" ? 0.1 : 1 / 12);
      const fittings = [
        parts.map((part) => [part[3]]),
        parts.map((part) => [part[4]]),
        parts.map((part) => [inertia(part)]),
      ];
      const rung = (answer(RING, ...blade, ...fittings)[0] ?? []).map(Number);
      const shownRing = row("Balance", rows.ring, 0, 4).map(Number);
      shownRing.forEach((figure, at) => {
        expect(figure).toBeCloseTo(rung[at] as number, 6);
      });
      expect(shownRing[0]).toBeLessThan(Number(answer(RING, ...blade)[0]?.[0]));
    },
  );

  test("the Stations sheet bends each blade at the hardness its line aims at, and rings it bare", () => {
    const [sword] = swords.swords;
    if (sword === undefined) throw new Error("no sword");
    const column = (at: number) => sword.stations.map((station) => [station[at]]);
    const blade = [column(0), column(1), column(2), sword.grind, null, sword.steel, null, null, null, null];
    const aim = demoRun.lines.find(({ line }) => line === "L5")?.aim;
    const flex = answer(FLEX, ...blade, aim, null, 810, 0)[0] ?? [];
    const ring = answer(RING, ...blade)[0] ?? [];
    const figures = Array.from({ length: 6 }, (_, at) => Number(shown("Stations", 11 + at, 12)));
    [flex[1], flex[5], flex[7], ring[0], ring[1], ring[2]].forEach((figure, at) => {
      expect(figures[at]).toBeCloseTo(Number(figure), 6);
    });
  });

  test.each([0, 1])(
    "the pommel worked out puts the balance of sword %i where it is wanted",
    async (sword) => {
      const { parts, whole, wanted, pommel } = swordRows(sword);
      const wish = demo.sheets.find(({ name }) => name === "Balance")?.rows[wanted]?.[FIGURE]?.content;
      const heavier = changed(
        demo,
        "Balance",
        [parts + 4, FIGURE + 2],
        Number(shown("Balance", pommel, FIGURE)),
      );
      const again = await calculated(heavier);
      expect(shown("Balance", whole, FIGURE + 1, again)).toBeCloseTo(Number(wish), 6);
    },
  );
});
