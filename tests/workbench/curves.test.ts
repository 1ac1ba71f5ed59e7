import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { lineCell } from "../../src/workbook/sheets/lines-sheet";
import { workbenchPages } from "./session";

/** Kept after the tests, to be looked at. */
const PICTURES = "node_modules/.cache/screens";

const workbench = workbenchPages("for each test");

/** How many pixels of the grid have the ink of a curve, #242424, which no cell of our sheets writes in. */
function inkPixels(page: Page): Promise<number> {
  return page.evaluate(() => {
    const canvases = [...document.querySelectorAll<HTMLCanvasElement>("#grid canvas")];
    const [sheet] = canvases.sort((one, other) => other.width * other.height - one.width * one.height);
    const copy = document.createElement("canvas");
    const pen = copy.getContext("2d", { willReadFrequently: true });
    if (sheet === undefined || pen === null) return 0;
    [copy.width, copy.height] = [sheet.width, sheet.height];
    pen.drawImage(sheet, 0, 0);
    const image = pen.getImageData(0, 0, sheet.width, sheet.height).data;
    let found = 0;
    for (let at = 0; at < image.length; at += 4)
      if ([0, 1, 2].every((channel) => image[at + channel] === 0x24)) found += 1;
    return found;
  });
}

describe("curves in the grid", () => {
  test("each line has the curve of its steel in its row", async () => {
    const { bench, page } = workbench();
    await bench.settled();
    await bench.goTo(lineCell(0, "temperC"));
    mkdirSync(PICTURES, { recursive: true });
    await page.screenshot({ path: join(PICTURES, "lines-curves.png") });
    const drawn = await inkPixels(page);
    expect(drawn).toBeGreaterThan(100);
    await bench.sheet("Costs");
    await expect.poll(() => inkPixels(page)).toBeLessThan(drawn / 10);
  });

  test("an inserted temper curve brings its picture, which follows the cells and goes with its words", async () => {
    const { bench, page } = workbench();
    await bench.settled();
    await page.getByRole("button", { name: "Hardening and tempering" }).click();
    await page.getByText("Put a table into the sheet").click();
    await page.getByRole("button", { name: "Put it on a new sheet" }).click();
    await page.getByText(/^Written on the sheet/).waitFor();
    await bench.says("G2", /^Curve of A2:E14$/);
    const whole = await inkPixels(page);
    await page.screenshot({ path: join(PICTURES, "inserted-curve.png") });
    expect(whole).toBeGreaterThan(300);
    // An end of the band far above the others: the axis grows, the line becomes flatter.
    await bench.enter("E3", "99");
    await expect.poll(() => inkPixels(page)).not.toBe(whole);
    await bench.enter("G2", "");
    await expect.poll(() => inkPixels(page)).toBeLessThan(whole / 4);
  });
});
