import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { FIRST_SECTION } from "../../src/workbook/sheets/demo/section-sheet";
import { lineCell } from "../../src/workbook/sheets/lines-sheet";
import { violations } from "../axe";
import type { Bench } from "./bench";
import { type Workbench, workbenchPages } from "./session";
import { describeTabs } from "./tabs";

const ERROR = /^#(N\/A|VALUE!) \S/;

/** How bright a picture is, from 0 (black) to 255, worked out in a page. */
async function brightness(base64: string): Promise<number> {
  const image = new Image();
  image.src = `data:image/png;base64,${base64}`;
  await image.decode();
  const context = new OffscreenCanvas(image.width, image.height).getContext("2d");
  context?.drawImage(image, 0, 0);
  const { data = [] } = context?.getImageData(0, 0, image.width, image.height) ?? {};
  const colours = [...data].filter((_, at) => at % 4 < 3);
  return colours.reduce((sum, one) => sum + one, 0) / colours.length;
}

const workbench = workbenchPages("for all tests");
let opened: Workbench;
let bench: Bench;

beforeEach(() => {
  opened = workbench();
  ({ bench } = opened);
});

describe("the run as it opens", () => {
  test("every line has its figures, and no cell shows an error", async () => {
    await bench.settled();
    const run = await bench.lines();
    expect(run).toHaveLength(6);
    for (const shown of run) {
      for (const key of ["starts", "mass", "temperC", "temperF", "low", "high"]) {
        expect(shown[key], `${shown.line} ${key}`).toMatch(/^\d+$/);
      }
      expect(shown.band).toMatch(/^\d+–\d+$/);
      expect(shown.status).toMatch(/^(inside|likely inside|uncertain|too hard|too soft)$/);
      // 32 °F at 0 °C and 212 °F at 100 °C fix the scale.
      expect(Number(shown.temperF)).toBe(Math.round((Number(shown.temperC) * 180) / 100 + 32));
    }
    // Smallest number with P(good ≥ wanted) ≥ 0.90, from binomial sums worked in exact fractions.
    expect(run.map(({ starts }) => starts)).toEqual(["28", "44", "14", "8", "10", "6"]);
  });

  test("the grid stands beside the pane at 1280 × 800, both whole", async () => {
    await bench.settled();
    const { page } = opened;
    const pane = await page.locator("#pane").boundingBox();
    const { x, y, width, height } = await bench.picture();
    expect(pane?.width).toBeGreaterThanOrEqual(300);
    expect(x + width).toBeLessThanOrEqual(pane?.x ?? 0);
    expect(y + height).toBeLessThanOrEqual(800);
    await page.screenshot({ path: join(tmpdir(), "workbench-1280.png") });
  });
});

describe("changing the run", () => {
  test("colours and marks after an edit are those of a sheet that is drawn from nothing", async () => {
    await bench.settled();
    const picture = async () => {
      // In sight of what changes; longer than any drawing is put off.
      await bench.goTo(lineCell(3, "status"));
      await opened.page.waitForTimeout(1500);
      return opened.page.locator("#grid").screenshot();
    };
    const before = await picture();
    // Too soft for its use, and a steel that its list does not offer.
    await bench.enter(lineCell(0, "aim"), "40");
    await bench.enter(lineCell(1, "steel"), "no such steel");
    await bench.says(lineCell(1, "temperC"), ERROR);
    const edited = await picture();
    await bench.sheet("Recipe");
    await bench.sheet("Lines");
    const anew = await picture();
    expect(edited.equals(anew)).toBe(true);
    expect(edited.equals(before)).toBe(false);
    await bench.press("Undo");
    await bench.press("Undo");
    await bench.says(lineCell(1, "temperC"), /^\d+$/);
    expect((await picture()).equals(before)).toBe(true);
  });

  test("a steel that does not exist spoils its own line only, and undo restores it", async () => {
    await bench.settled();
    const before = await bench.lines();
    await bench.enter(lineCell(0, "steel"), "no such steel");
    await bench.says(lineCell(0, "temperC"), /^#N\/A .*no such steel/);
    const [spoilt, ...others] = await bench.lines();
    for (const key of ["mass", "temperC"]) expect(spoilt?.[key], key).toMatch(ERROR);
    for (const key of ["temperF", "low", "high"]) expect(spoilt?.[key], key).toBe("not assessed");
    expect(spoilt?.starts).toBe(before[0]?.starts);
    expect(spoilt?.band).toBe(before[0]?.band);
    expect(others).toEqual(before.slice(1));
    await bench.press("Undo");
    await bench.settled();
    await expect.poll(() => bench.line(0)).toEqual(before[0]);
    await bench.press("Redo");
    await bench.says(lineCell(0, "temperC"), /^#N\/A/);
    await bench.press("Undo");
    await bench.settled();
  });

  test("hardness and caution follow a temper that is typed over", async () => {
    await bench.settled();
    const before = await bench.line(5);
    await bench.enter(lineCell(5, "temperC"), "200");
    await bench.says(lineCell(5, "temperF"), "392");
    const after = await bench.line(5);
    // Softer the hotter it is tempered: the sword's own temper lies well above 200 °C.
    expect(Number(before.temperC)).toBeGreaterThan(250);
    expect(Number(after.low)).toBeGreaterThan(Number(before.low));
    expect(after.status).toBe("too hard");
    expect(after.caution).not.toBe(before.caution);
    await bench.press("Undo");
    await expect.poll(() => bench.line(5)).toEqual(before);
  });
});

describe("typing into the grid", () => {
  test("what is being typed keeps the focus when the grid asks for it, and loses it to a click", async () => {
    const { page } = opened;
    const field = page.locator("#cell-content");
    await bench.newSheet();
    await field.fill("=6*7");
    await page.evaluate(() => document.querySelector<HTMLElement>('#grid [data-u-comp="editor"]')?.focus());
    expect(await field.evaluate((own) => own === document.activeElement)).toBe(true);
    await page.keyboard.press("Enter");
    await bench.says("A1", "42");
    await field.fill("=6*8");
    await bench.clickBelowTheRun();
    await bench.says("A1", "42");
  });

  test("a formula typed by keyboard shows its value, with the argument hint on the way", async () => {
    const { page } = opened;
    const address = await bench.clickBelowTheRun();
    await page.keyboard.type("=BLADE.CARBON(");
    await page.getByText("BLADE.CARBON(", { exact: false }).last().waitFor();
    await page.keyboard.type('"1095")');
    await page.keyboard.press("Enter");
    // 95 hundredths of a percent: the designation says it (SAE numbering system).
    await bench.says(address, "0.95");
    await bench.press("Undo");
    await bench.says(address, "Empty");
  });

  test("names complete after a few letters", async () => {
    const { page } = opened;
    await bench.clickBelowTheRun();
    await page.keyboard.type("=blade.cont", { delay: 20 });
    await page.keyboard.press("Backspace");
    await page.keyboard.press("Backspace");
    await page.getByText("BLADE.COMPOSITION").waitFor();
    // The first closes the list, the second gives up what was being typed.
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    await expect.poll(() => bench.result()).toBe("Empty");
  });

  test("a table spills, a full cell in its way is named, and clearing it lets the table out", async () => {
    await bench.newSheet();
    await bench.enter("B2", '=BLADE.COMPOSITION("1095")');
    await bench.says("B2", "C");
    // SAE J403 limits of 1095: C 0.90 to 1.03, Mn 0.30 to 0.50.
    await bench.says("C2", "0.9");
    await bench.says("D2", "1.03");
    await bench.enter("C3", "in the way");
    await bench.says("B2", /^#SPILL! .*clear/);
    await bench.enter("C3", "");
    await bench.says("B2", "C");
  });

  test("the sentence behind an error stands in the text view and in the table", async () => {
    await bench.newSheet();
    await bench.enter("A1", '=BLADE.CARBON("5106")');
    await bench.says("A1", /^#N\/A "5106" .*5160/);
    expect((await bench.table())[0]?.[0]).toMatch(/^#N\/A "5106" /);
    await bench.enter("A2", "=BLADE.CARBIN(1)");
    await bench.says("A2", /^#NAME\? .*BLADE\.CARBON/);
    await bench.enter("A3", "=1/0");
    await bench.says("A3", /^#DIV\/0! /);
  });
});

describe("a sheet beside the lines", () => {
  test("one formula fills the depth, the hardness and the verdict of every section", async () => {
    await bench.settled();
    await bench.sheet("Section");
    await bench.says("G5", /^\d/);
    const rows = (await bench.table()).slice(FIRST_SECTION, FIRST_SECTION + 6);
    // Steels as the lines name them: 1075, C60, and 51CrV4 and 5160 twice each, in slow oil and in fast.
    expect(rows.map(([, steel]) => steel)).toEqual(["1075", "C60", "51CrV4", "51CrV4", "5160", "5160"]);
    for (const row of rows) expect(row[10]).toMatch(/harden|marginal/);
  });
});

describeTabs(() => bench);

describe("the page around the grid", () => {
  test("the grid begins within 120 px at 1280 and within 35 % of the height at 200 % zoom", async () => {
    const { page } = opened;
    await bench.settled();
    // 200 % zoom of 1280 × 800 leaves a page 640 × 400.
    for (const [width, height, most] of [
      [1280, 800, 120],
      [640, 400, 140],
    ] as const) {
      await page.setViewportSize({ width, height });
      expect((await bench.picture()).y, `${width} px`).toBeLessThanOrEqual(most);
    }
    await page.setViewportSize({ width: 1280, height: 800 });
  });

  test("the steps of the run lead to their sheets and the next blank cell is one press away", async () => {
    const { page } = opened;
    await bench.settled();
    const step = (name: string) => page.locator(`#steps [data-step="${name}"]`);
    await expect.poll(() => step("Planning").textContent()).toContain("filled in");
    await step("Buying").click();
    await expect.poll(() => step("Buying").getAttribute("aria-current")).toBe("step");
    await bench.sheet("Lines");
    await page.locator("#next-step button").click();
    await expect.poll(() => page.locator('#sheets [aria-current="true"]').textContent()).not.toBe("Lines");
    expect(await bench.result()).toBe("Empty");
  });

  test("F6 leads out of the grid and round the page, Shift+F6 back", async () => {
    const { page } = opened;
    await bench.settled();
    await bench.clickBelowTheRun();
    const region = () =>
      page.evaluate(() =>
        [".bar", ".cell", ".grid", ".path", ".pane"].find(
          (name) => document.activeElement?.closest(name) != null,
        ),
      );
    const seen: (string | undefined)[] = [await region()];
    for (let press = 0; press < 5; press += 1) {
      await page.keyboard.press("F6");
      seen.push(await region());
    }
    expect(seen).toEqual([".grid", ".path", ".pane", ".bar", ".cell", ".grid"]);
    await page.keyboard.press("Shift+F6");
    expect(await region()).toBe(".cell");
  });
});

describe("the page as a phone and a dark room show it", () => {
  test("the pane is a drawer over the sheet: closed at first, opened by its button, closed by Escape", async () => {
    const { page } = opened;
    await bench.settled();
    const pane = page.locator("#pane");
    const toggle = page.locator("#toggle-pane");
    await page.setViewportSize({ width: 400, height: 860 });
    await expect.poll(() => pane.isHidden()).toBe(true);
    const sheet = await bench.picture();
    expect(sheet.width).toBe(400);
    await toggle.click();
    const drawer = await pane.boundingBox();
    expect(drawer?.width).toBe(360);
    expect((drawer?.x ?? 0) + (drawer?.width ?? 0)).toBe(400);
    // It lies over the sheet and does not push it.
    expect(await bench.picture()).toEqual(sheet);
    await page.keyboard.press("Escape");
    await expect.poll(() => pane.isHidden()).toBe(true);
    expect(await toggle.getAttribute("aria-pressed")).toBe("false");
    expect(await toggle.evaluate((own) => own === document.activeElement)).toBe(true);
  });

  test("page, pane and grid follow the system into the dark and back", async () => {
    const { page } = opened;
    await bench.settled();
    const shade = async (part: string) =>
      page.evaluate(brightness, (await page.locator(part).screenshot()).toString("base64"));
    const parts = [".bar", "#pane", "#grid"];
    for (const scheme of ["light", "dark", "light"] as const) {
      await page.emulateMedia({ colorScheme: scheme });
      for (const part of parts) {
        const shown = expect.poll(() => shade(part), { message: `${part} ${scheme}` });
        await (scheme === "dark" ? shown.toBeLessThan(90) : shown.toBeGreaterThan(190));
      }
    }
  });
});

describe("for everybody", () => {
  // The grid paints its cells on a canvas that no assistive technology can read; #grid alone is left out.
  // The two fields, the text below them and "Read as table" stand in for it and are checked.
  test("axe finds nothing and nothing runs off sideways, from 1280 down to 320 px", async () => {
    const { page } = opened;
    await bench.settled();
    await bench.says(lineCell(5, "caution"), /brittle range/);
    await bench.press("Read as table");
    // The title stands over the columns that scroll, and has all of them: in one it would be a tower.
    const title = page.locator("#table tbody tr").first().locator("td").last();
    await expect.poll(() => title.textContent()).toMatch(/^Lines: what is made/);
    expect((await title.boundingBox())?.height).toBeLessThan(40);
    for (const width of [1280, 640, 400, 320]) {
      await page.setViewportSize({ width, height: 800 });
      expect(await violations(page, { exclude: "#grid" }), `${width} px`).toEqual([]);
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(overflow, `${width} px`).toBeLessThanOrEqual(0);
    }
  });
});
