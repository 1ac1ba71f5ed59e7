import { beforeAll, describe, expect, test } from "vitest";
import type { CalculatedWorkbook } from "../../src/engine/calculate-workbook";
import type { WorkbookModel } from "../../src/workbook/model/sheet-model";
import {
  BY_NAME,
  CERTIFICATE_AT,
  FIRST_HEAT,
  FIRST_OWN,
  OWN_BAND,
  VERDICT,
} from "../../src/workbook/sheets/demo/certificates-sheet";
import { BY_BOOK, FIRST_COUPON, FITTED, LIKELY, READING } from "../../src/workbook/sheets/demo/coupons-sheet";
import { demoWorkbook } from "../../src/workbook/sheets/demo/demo-workbook";
import {
  FIRST_PLANNED,
  FIRST_TOTAL,
  FIRST_TYPED,
  typedColumn,
} from "../../src/workbook/sheets/demo/run-plan-sheet";
import {
  DEPTH,
  FIRST_POINT,
  FIRST_SECTION,
  FITTED_CLAY,
  MEASURED,
} from "../../src/workbook/sheets/demo/section-sheet";
import { calculated, changed, shownIn } from "./demo";

const demo = demoWorkbook();
let book: CalculatedWorkbook;

beforeAll(async () => {
  book = await calculated(demo);
}, 60_000);

const shown = (sheet: string, at: number, column: number, of = book) => shownIn(of, sheet, at, column);

function row(sheet: string, at: number, from: number, count: number, of = book) {
  return Array.from({ length: count }, (_, index) => shown(sheet, at, from + index, of));
}

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

function mended(): WorkbookModel {
  const thickness = changed(demo, "Run plan", [FIRST_TYPED + 1, typedColumn("thickness")], "5/32 in");
  return changed(thickness, "Run plan", [FIRST_TYPED + 4, typedColumn("target HRC")], 49);
}

describe("every sheet", () => {
  test("shows no error but the two lines whose cells are wrong on purpose", () => {
    expect(faultyRows(demo, book)).toEqual([
      `Run plan!${FIRST_PLANNED + 2}`,
      `Run plan!${FIRST_PLANNED + 5}`,
    ]);
  });

  test("shows none at all once those two cells are put right, and the run turns out late", async () => {
    const right = await calculated(mended());
    expect(faultyRows(demo, right)).toEqual([]);
    const totals = Array.from({ length: 16 }, (_, index) =>
      row("Run plan", FIRST_TOTAL + index, 0, 4, right),
    );
    const bench = totals.find(([what]) => what === "bench time");
    // By hand: 56.271 + 44·2.3625 + 14·2.55 + 8·3.55 + 10·16.4 + 6·28.35 h at the bench and 27.5 h of setting up,
    // 585.92 h against 9 × 60.
    expect(bench?.[1]).toBeCloseTo(585.921 / 60, 4);
    expect(bench?.[3]).toMatch(/^LATE: 45\.9 h over/);
  });

  test("has a short name of its own, marks and only results in cells that are worked out", () => {
    const names = demo.sheets.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const { name, rows } of demo.sheets.slice(2)) {
      expect(name.length, name).toBeLessThanOrEqual(12);
      const cells = rows.flat().filter((cell) => cell !== undefined);
      const marks = cells.filter(({ role }) => role === "mark").map(({ content }) => content);
      expect(marks, name).toContain("type");
      for (const { role, content } of cells) {
        if (role === "worked") expect(String(content), name).toMatch(/^(=|$)/);
      }
    }
  });
});

describe("certificates", () => {
  test("verdict of each heat", () => {
    const verdicts = Array.from({ length: 6 }, (_, index) =>
      shown("Certificates", FIRST_HEAT + index, VERDICT),
    );
    expect(verdicts).toEqual([
      "pass",
      expect.stringMatching(/^no heat number; incomplete: Ni, Mo not given/),
      "fail: Mn high",
      "pass",
      "pass",
      "pass",
    ]);
  });

  test("0.95 % manganese is too much for 1075", () => {
    const lines = Array.from({ length: 6 }, (_, index) =>
      row("Certificates", CERTIFICATE_AT.row + index, 0, 5),
    );
    // SAE J403: 1075 has C 0.70 to 0.80, Mn 0.40 to 0.70, P 0.040 and S 0.050 at most.
    expect(lines).toEqual([
      ["C", 0.7, 0.8, 0.76, "OK"],
      ["Si", "", "", 0.22, "NO LIMIT"],
      ["Mn", 0.4, 0.7, 0.95, "HIGH"],
      ["P", "", 0.04, 0.015, "OK"],
      ["S", "", 0.05, 0.01, "OK"],
      ["verdict", "", "", "", "fail: Mn high"],
    ]);
  });

  test("the heat's own analysis drives the hardness, beside the grade's", async () => {
    const [low, likely, high] = row("Certificates", FIRST_OWN + 5, OWN_BAND, 3).map(Number);
    // ±3 HRC by formula; the heat lies near the middle of 5160, so both agree within 1.
    expect([Number(likely) - Number(low), Number(high) - Number(likely)]).toEqual([3, 3]);
    expect(
      Math.abs(Number(likely) - Number(shown("Certificates", FIRST_OWN + 5, BY_NAME))),
    ).toBeLessThanOrEqual(1);
    const carbon = VERDICT + 1;
    const leaner = await calculated(changed(demo, "Certificates", [FIRST_HEAT + 5, carbon], 0.5));
    expect(shown("Certificates", FIRST_OWN + 5, OWN_BAND + 1, leaner)).toBeLessThan(Number(likely));
    expect(shown("Certificates", FIRST_OWN + 5, BY_NAME, leaner)).toBe(
      shown("Certificates", FIRST_OWN + 5, BY_NAME),
    );
    expect(shown("Certificates", FIRST_HEAT + 5, VERDICT, leaner)).toBe("fail: C low");
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
