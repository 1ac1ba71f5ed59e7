import { beforeAll, describe, expect, test } from "vitest";
import type { CalculatedWorkbook } from "../../src/engine/calculate-workbook";
import { referencesIn } from "../../src/formula/references";
import type { WorkbookModel } from "../../src/workbook/model/sheet-model";
import { BY_BOOK, FIRST_COUPON, FITTED, LIKELY, READING } from "../../src/workbook/sheets/demo/coupons-sheet";
import { demoWorkbook } from "../../src/workbook/sheets/demo/demo-workbook";
import {
  DEPTH,
  FIRST_POINT,
  FIRST_SECTION,
  FITTED_CLAY,
  MEASURED,
} from "../../src/workbook/sheets/demo/section-sheet";
import { FIRST_ROW, HEADINGS } from "../../src/workbook/sheets/parts/table-sheet";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { calculated, changed, shownIn } from "./demo";

const demo = demoWorkbook();
let workbook: CalculatedWorkbook;

beforeAll(async () => {
  workbook = await calculated(demo);
}, 60_000);

const shown = (sheet: string, at: number, column: number, of = workbook) => shownIn(of, sheet, at, column);

function* cellsOf({ sheets }: WorkbookModel): Generator<[sheet: string, row: number, column: number]> {
  for (const { name, rows, columnWidths } of sheets) {
    for (let r = 0; r < rows.length + 20; r += 1) {
      for (let c = 0; c < columnWidths.length + 5; c += 1) yield [name, r, c];
    }
  }
}

/** Each row that shows an error, as `sheet!row`. */
function faultyRows(workbook: WorkbookModel, of: CalculatedWorkbook): string[] {
  const faulty = [...cellsOf(workbook)].filter(([sheet, r, c]) => {
    const cell = of.at(sheet, r, c);
    return cell !== undefined && "error" in cell;
  });
  return [...new Set(faulty.map(([sheet, r]) => `${sheet}!${r + 1}`))];
}

describe("every sheet", () => {
  test("shows no error", () => {
    expect(faultyRows(demo, workbook)).toEqual([]);
  });

  test("reads no sheet that the demo leaves out", () => {
    const names = demo.sheets.map(({ name }) => name);
    const read = demo.sheets.flatMap(({ name, rows }) =>
      rows
        .flat()
        .map((cell) => String(cell?.content))
        .filter((content) => content.startsWith("="))
        .flatMap((content) => referencesIn(content, name).map(({ sheet }) => sheet)),
    );
    expect([...new Set(read)].filter((name) => !names.includes(name))).toEqual([]);
    expect(new Set(read).size).toBeGreaterThan(10);
  });

  test("is named once and of the planning workbook, but for three sheets of the demo's own", () => {
    const names = demo.sheets.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    const template = planningTemplate().sheets.map(({ name }) => name);
    expect(names.filter((name) => !template.includes(name))).toEqual(["Coupons", "Section", "Balance"]);
  });
});

describe("steels", () => {
  /** Where a heading stands, counted from 0. */
  const column = (heading: string) =>
    demo.sheets
      .find(({ name }) => name === "Steel and heats")
      ?.rows[HEADINGS]?.findIndex((cell) => cell?.content === heading) ?? -1;
  const verdicts = (of = workbook) =>
    Array.from({ length: 6 }, (_, index) =>
      shown("Steel and heats", FIRST_ROW + index, column("Mill's figures"), of),
    );

  // SAE J403: 1075 has Mn 0.40 to 0.70; the heat has 0.95.
  test("verdict of each heat", () => {
    expect(verdicts()).toEqual([
      "PASS",
      expect.stringMatching(/^CHECK: no heat number; CHECK: incomplete: Ni, Mo not given/),
      "FAIL: Mn high",
      "PASS",
      "PASS",
      "PASS",
    ]);
  });

  test("a leaner heat fails", async () => {
    // The elements follow the verdict, carbon first; 5160 has C 0.56 to 0.61 (SAE J404, from memory).
    const leaner = await calculated(changed(demo, "Steel and heats", [FIRST_ROW + 5, column("C %")], 0.5));
    expect(verdicts(leaner)[5]).toBe("FAIL: C low");
  });
});

describe("coupons", () => {
  test("softer readings ask for a cooler temper, and the setting of the oven follows", async () => {
    const [book1, coupons] = [0, 1].map((index) => Number(shown("Coupons", BY_BOOK + index, LIKELY)));
    expect(Number(shown("Coupons", FITTED, 2))).toBeLessThan(0);
    expect(coupons).toBeLessThan(Number(book1));
    // The thermometer read 12 and 14 °C under the setting at 300 and 400 °C.
    const set = Number(shown("Coupons", BY_BOOK + 1, 5)) - Number(coupons);
    expect(set).toBeGreaterThan(12);
    expect(set).toBeLessThan(14);
  });

  test("a reading changed moves the temper with the coupons, not that of the book", async () => {
    const harder = await calculated(changed(demo, "Coupons", [FIRST_COUPON, READING], 56.5));
    expect(shown("Coupons", BY_BOOK + 1, LIKELY, harder)).toBeGreaterThan(
      Number(shown("Coupons", BY_BOOK + 1, LIKELY)),
    );
    expect(shown("Coupons", BY_BOOK, LIKELY, harder)).toBe(shown("Coupons", BY_BOOK, LIKELY));
  });

  test("a coupon that cannot be is refused with what to check", async () => {
    const wrong = await calculated(changed(demo, "Coupons", [FIRST_COUPON, READING], 45));
    expect(shown("Coupons", FITTED, 0, wrong)).toMatch(/^#N\/A coupon 1: .*check section, quench/);
    expect(shown("Coupons", BY_BOOK, LIKELY, wrong)).toBe(shown("Coupons", BY_BOOK, LIKELY));
  });
});

describe("section", () => {
  test("thin oil-hardening blades harden through, a 20 mm hatchet of plain carbon steel does not", () => {
    const verdicts = Array.from({ length: 6 }, (_, index) =>
      shown("Section", FIRST_SECTION + index, DEPTH + 4),
    );
    expect(verdicts[1]).toMatch(/^does not harden through/);
    for (const alloyed of verdicts.slice(2)) expect(alloyed).toBe("hardens through");
  });

  test("the clay fitted gives back the depth measured, and more clay hardens less", async () => {
    const measured = 9.5;
    expect(Math.abs(Number(shown("Section", FITTED_CLAY + 2, 1)) - measured)).toBeLessThan(0.05);
    const deeper = await calculated(changed(demo, "Section", [MEASURED, 1], 9.7));
    expect(shown("Section", FITTED_CLAY, 1, deeper)).toBeLessThan(Number(shown("Section", FITTED_CLAY, 1)));
  });

  test("the profile is hard at the edge and soft under the clay", () => {
    const likely = (at: number) => shown("Section", FIRST_POINT.row + at, FIRST_POINT.column + 2);
    // 1095 as quenched: at least 64 HRC where it is all martensite (hardness against carbon, any handbook).
    expect(likely(0)).toBeGreaterThan(64);
    expect(likely(25)).toBe("under 20");
    const notes = demo.sheets.find(({ name }) => name === "Section")?.rows.flat();
    expect(notes?.some((cell) => /No value for clay is published/.test(String(cell?.content)))).toBe(true);
  });
});
