import { mkdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { violations } from "../axe";
import { launch } from "../browser";
import { type FakeCells, fakeWorkbook } from "./fake-workbook";
import { answered, choose, type OpenPane, openPane } from "./open-pane";
import { type ServedFolder, serveFolder } from "./static-server";

const PICTURES = join(tmpdir(), "blade-metallurgy-pane");

let browser: Browser;
let served: ServedFolder;

beforeAll(async () => {
  mkdirSync(PICTURES, { recursive: true });
  served = await serveFolder(inject("pages"));
  browser = await launch();
});

afterAll(async () => {
  await browser?.close();
  served?.close();
});

/** Part of run R-07 of Tern Hollow Forge, invented. Excel shows an error's code in the cell; its sentence stays with it. */
const RUN: FakeCells = {
  "Plan!D7": ["=BLADE.TEMPERED_HRC(A7,B7)", 58],
  "Plan!D8": ["=BLADE.TEMPERED_HRC(A8,B8)", "#VALUE!"],
  "Plan!D9": ['=ROUND(BLADE.CARBON("1095"),1)', 1],
  "Plan!A7": ["1095", "1095"],
  "Plan!B7": ["400 F", "400 F"],
  "Plan!A8": ["5160", "5160"],
  "Plan!B8": ["hot", "hot"],
};

/** Names as they were seen in broken files; see the tests of Repair. */
const BROKEN: FakeCells = {
  "Plan!A1": ['=BLADE.CARBON("1084")', "#NAME?"],
  "Plan!A2": ['=[2]!_xldudf_BLADE_CARBON("1095")', 0.95],
  "Plan!A3": ['=BLADE.CARBON("1095")', 0.95],
  "Costs!A1": ['=BLADE.CARBON("1084")', "#NAME?"],
};

type Options = NonNullable<Parameters<typeof openPane>[1]["options"]>;

async function open(name: string, cells: FakeCells, options: Options = {}): Promise<OpenPane> {
  const before = (page: Page) => fakeWorkbook(page, cells, ["Costs"]);
  const opened = await openPane(browser, { served, before, options });
  await choose(opened.page, name);
  return opened;
}

const select = (page: Page, address: string) => page.evaluate(`select(${JSON.stringify(address)})`);

async function inputs(page: Page): Promise<string[][]> {
  const rows = page.locator("table").filter({ has: page.locator('caption:text-is("Inputs as read")') });
  return rows
    .first()
    .locator("tbody tr")
    .evaluateAll((found) => found.map((row) => [...row.children].map((cell) => cell.textContent ?? "")));
}

describe("This cell", () => {
  test("shows the inputs as read with their units, the relations with range and error, and follows the selection", async () => {
    const { page, problems } = await open("This cell", RUN);
    await page.waitForSelector('.answer:text-is("Plan!D7: 58")');
    const [steel, temper] = await inputs(page);
    expect(steel).toEqual(["steel", "A7: 1095", "1095"]);
    // By hand, °C = (°F − 32) × 5 / 9: 400 °F is 204.4 °C.
    expect(temper?.slice(1)).toEqual(["B7: 400 F", "204 °C (400 °F)"]);
    // The sheet of this test is not worked out: 58 was not written by the formula.
    await page.waitForSelector('.notice:has-text("The cell shows 58; its inputs give")');
    const names = await page.locator("dt").allTextContents();
    for (const name of ["Relation", "Source", "Range", "Expected error"]) expect(names).toContain(name);
    await select(page, "Plan!B8");
    await page.waitForSelector("text=This cell holds no formula.");
    await select(page, "Plan!D9");
    await page.waitForSelector('h3:text-is("BLADE.CARBON")');
    expect(problems).toEqual([]);
    await page.context().close();
  });

  test("an error has its sentence and the way out", async () => {
    const { page } = await open("This cell", RUN);
    await select(page, "Plan!D8");
    await page.waitForSelector('.refusal:has-text("hot")');
    expect(await page.locator("p", { hasText: "Way out" }).textContent()).toMatch(/Mend B8 .*temperature/);
    await page.context().close();
  });

  test("help of the function opens by keyboard", async () => {
    const { page } = await open("This cell", RUN);
    await page.getByRole("button", { name: "Help for TEMPERED_HRC" }).focus();
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=BLADE.TEMPERED_HRC(steel");
    await page.context().close();
  });
});

describe("Repair", () => {
  test("finds, lists and mends what is broken; names protected sheets; leaves the rest", async () => {
    const { page, problems } = await open("Share and repair", BROKEN);
    await page.getByRole("button", { name: "Look through the workbook" }).click();
    await page.waitForSelector("text=4 cells with a BLADE formula; 3 broken.");
    await page.waitForSelector("text=Costs is protected");
    await page.getByRole("button", { name: "Enter 2 formulas anew" }).click();
    await page.waitForSelector("text=2 of 2 entered anew.");
    const held = await page.evaluate<string[]>(
      '["Plan!A1", "Plan!A2", "Plan!A3", "Costs!A1"].map((address) => cells.get(address)[0])',
    );
    expect(held).toEqual([
      '=BLADE.CARBON("1084")',
      '=BLADE.CARBON("1095")',
      '=BLADE.CARBON("1095")',
      '=BLADE.CARBON("1084")',
    ]);
    expect(problems).toEqual([]);
    await page.context().close();
  });
});

describe("a table into the sheet", () => {
  test("goes where there is room, and asks before it covers anything", async () => {
    const { page } = await open("Steels", { "Plan!A1": ["", ""], "Plan!C4": ["kept", "kept"] });
    await page.getByText("Put a table into the sheet").click();
    await page.getByLabel("Table", { exact: true }).selectOption("Composition");
    await page.getByRole("button", { name: "Put it at the selected cell" }).click();
    await page.waitForSelector("text=1 cell holds something already.");
    expect(await page.evaluate('cells.has("Plan!A2")')).toBe(false);
    await page.getByRole("button", { name: "Replace it" }).click();
    await page.waitForSelector("text=Written into Plan!A1:");
    expect(await page.evaluate('cells.get("Plan!A3")[0]')).toBe("C");
    await page.context().close();
  });
});

describe.each([
  [320, "light"],
  [320, "dark"],
  [400, "light"],
] as const)("%i pixels, %s", (width, colorScheme) => {
  test.each([
    ["This cell", RUN, "Plan!D7"],
    ["This cell", RUN, "Plan!D8"],
    ["Share and repair", BROKEN, ""],
  ] as const)("%s fits, and axe finds nothing (%#)", async (name, cells, address) => {
    const { page } = await open(name, cells, { viewport: { width, height: 900 }, colorScheme });
    if (address !== "") await select(page, address);
    else await page.getByRole("button", { name: "Look through the workbook" }).click();
    await answered(page);
    const picture = `cell-${address.slice(-2) || "repair"}-${width}-${colorScheme}.png`;
    await page.screenshot({ path: join(PICTURES, picture), fullPage: true });
    const beyond = await page.evaluate(
      "document.documentElement.scrollWidth - document.documentElement.clientWidth",
    );
    expect(beyond).toBe(0);
    expect(await violations(page)).toEqual([]);
    await page.context().close();
  });
});
