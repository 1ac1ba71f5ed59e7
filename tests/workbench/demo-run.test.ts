import { beforeAll, describe, expect, test } from "vitest";
import type { CalculatedWorkbook } from "../../src/engine/calculate-workbook";
import { FIGURE, swordRows } from "../../src/workbook/sheets/demo/balance-sheet";
import { demoWorkbook } from "../../src/workbook/sheets/demo/demo-workbook";
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
