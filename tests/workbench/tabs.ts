import { describe, expect, test } from "vitest";
import { cellName } from "../../src/formula/addresses";
import { BY_BOOK, FIRST_COUPON, LIKELY, READING } from "../../src/workbook/sheets/demo/coupons-sheet";
import { demoWorkbook } from "../../src/workbook/sheets/demo/demo-workbook";
import type { Bench } from "./bench";

const names = demoWorkbook().sheets.map(({ name }) => name);
const ERROR = /^#[A-Z/0]+[!?]?( |$)/;

/** Tests that leave the first sheet; they share the browser of the others. */
export function describeTabs(bench: () => Bench): void {
  describe("every sheet of the run", () => {
    test("opens by its tab, fits beside the pane and shows no error", async () => {
      await bench().settled();
      const faulty: string[] = [];
      for (const name of names) {
        await bench().sheet(name);
        const rows = await bench().table();
        expect(rows.length, name).toBeGreaterThan(5);
        const found = rows.flatMap((cells, row) => (cells.some((cell) => ERROR.test(cell)) ? [row] : []));
        faulty.push(...found.map((row) => `${name}!${row}`));
      }
      expect(faulty).toEqual([]);
    });

    test("a coupon's reading changed moves the temper with the coupons", async () => {
      await bench().settled();
      await bench().sheet("Coupons");
      const book = cellName(BY_BOOK, LIKELY);
      const withCoupons = cellName(BY_BOOK + 1, LIKELY);
      await bench().says(withCoupons, /^\d+$/);
      const before = Number(await bench().result());
      await bench().says(book, /^\d+$/);
      const printed = await bench().result();
      await bench().enter(cellName(FIRST_COUPON, READING), "56.5");
      await bench().goTo(withCoupons);
      await expect.poll(async () => Number(await bench().result())).toBeGreaterThan(before);
      await bench().says(book, printed);
      await bench().press("Undo");
      await bench().goTo(withCoupons);
      await expect.poll(async () => Number(await bench().result())).toBe(before);
    });

    test("a lot that goes wrong moves its yield", async () => {
      await bench().settled();
      await bench().sheet("Past lots");
      // By hand: the first lot began 8; 7 good are 0.875 of them, shown with two places; 4 are half.
      await bench().says("H5", "0.88");
      await bench().enter("D5", "4");
      await bench().says("H5", "0.50");
      await bench().press("Undo");
      await bench().says("H5", "0.88");
    });
  });
}
