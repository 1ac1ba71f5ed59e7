import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { launch } from "../browser";
import { fakeExcel } from "./fake-excel";
import { choose, openPane } from "./open-pane";
import { type ServedFolder, serveFolder } from "./static-server";

let browser: Browser;
let served: ServedFolder;

beforeAll(async () => {
  served = await serveFolder(inject("pages"));
  browser = await launch();
});

afterAll(async () => {
  await browser?.close();
  served?.close();
});

async function open(hash = ""): Promise<Page> {
  return (await openPane(browser, { served, hash })).page;
}

async function rows(page: Page, caption: RegExp): Promise<string[][]> {
  const table = page.locator("table").filter({ has: page.locator("caption", { hasText: caption }) });
  return table
    .locator("tbody tr")
    .evaluateAll((found) => found.map((row) => [...row.children].map((cell) => cell.textContent ?? "")));
}

describe("Steels", () => {
  test("a grade typed in any spelling shows its limits", async () => {
    const page = await open();
    await page.getByLabel("Find a steel").fill("aisi 5160");
    await page.waitForSelector('h3:text-is("5160")');
    const composition = await rows(page, /Composition/);
    // SAE J404 and ASTM A29: C 0.56-0.64, Cr 0.70-0.90.
    expect(composition.find(([element]) => element === "C")?.slice(1, 3)).toEqual(["0.56", "0.64"]);
    expect(composition.find(([element]) => element === "Cr")?.slice(1, 3)).toEqual(["0.7", "0.9"]);
    await page.context().close();
  });

  test("hardness after temper is whole HRC, falls with the temper, and says where it comes from", async () => {
    const page = await open();
    const tempers = await rows(page, /Hardness after/);
    const likely = tempers.map((row) => Number(row[3]));
    expect(tempers.length).toBeGreaterThan(8);
    expect(tempers[2]?.slice(0, 2)).toEqual(["200", "392"]);
    for (const [, , range] of tempers) expect(range).toMatch(/^\d{2} to \d{2}$/);
    expect(likely).toEqual([...likely].sort((a, b) => b - a));
    await page.getByText("Where the hardness comes from").click();
    await page.waitForSelector("details[open] dd");
    expect(await page.locator("details[open] dd").allTextContents()).toContainEqual(
      expect.stringMatching(/HRC/),
    );
    await page.context().close();
  });

  test("part of a name offers the grades that have it; choosing one shows it", async () => {
    const page = await open();
    await page.getByLabel("Find a steel").fill("X50");
    await page.getByRole("button", { name: "X50CrMoV15" }).click();
    await page.waitForSelector('h3:text-is("X50CrMoV15")');
    expect(await page.getByLabel("Find a steel").inputValue()).toBe("X50CrMoV15");
    await page.context().close();
  });

  test("an unknown name is answered with a sentence", async () => {
    const page = await open();
    await page.getByLabel("Find a steel").fill("no such steel");
    await page.waitForFunction(() =>
      /no such steel/.test(document.querySelector(".count")?.textContent ?? ""),
    );
    await page.context().close();
  });
});

describe("Hardening and tempering", () => {
  test("a temper in °F is shown in both scales, and equals the same in °C", async () => {
    const page = await open("#tempering");
    const answer = page.locator(".answer").first();
    await page.getByLabel("Temper", { exact: true }).fill("392 F");
    await page.waitForSelector("text=200 °C (392 °F)");
    const inFahrenheit = await answer.textContent();
    await page.getByLabel("Temper", { exact: true }).fill("200");
    await page.waitForTimeout(300);
    expect(await answer.textContent()).toBe(inFahrenheit);
    expect(inFahrenheit).toMatch(/^\d{2} to \d{2} HRC, likely \d{2}$/);
    await page.context().close();
  });

  test("a bad entry is answered with a sentence and nothing is left of the old figure", async () => {
    const page = await open("#tempering");
    await page.getByLabel("Temper", { exact: true }).fill("hot");
    await page.waitForSelector('.refusal:has-text("hot")');
    expect(await page.locator('section[aria-label="Hardness after a temper"] .answer').count()).toBe(0);
    await page.context().close();
  });
});

describe("Hardness bands", () => {
  test("56 HRC is too hard for a heavy cutting sword: common practice, no source", async () => {
    const page = await open("#bands");
    await page.getByLabel("Use").selectOption("Heavy cutting sword hard targets");
    await page.getByLabel("Steel").fill("5160");
    await page.getByLabel("Hardness, HRC").fill("56");
    await page.waitForSelector('.verdict:text-is("HIGH")');
    await page.context().close();
  });
});

describe("Functions", () => {
  test("the help of one function opens by its address", async () => {
    const page = await open("#functions/CARBON");
    await page.waitForSelector("text=BLADE.CARBON(steel");
    await page.context().close();
  });
});

describe("in Excel", () => {
  async function inExcel(holds: string): Promise<Page> {
    const before = (page: Page) => fakeExcel(page, holds);
    const { page } = await openPane(browser, { served, hash: "#tempering", before });
    return page;
  }

  const written = (page: Page) => page.evaluate<string[]>("window.written");

  test("an empty cell takes the formula at once", async () => {
    const page = await inExcel("");
    expect(await page.locator(".notice").count()).toBe(0);
    await page.getByRole("button", { name: "Put into the selected cell" }).first().click();
    await page.waitForSelector('.insert-status:has-text("Written into Plan!B2.")');
    expect(await written(page)).toEqual(['=BLADE.TEMPERED_RANGE("1095",200,2,2)']);
    await page.context().close();
  });

  test("a cell that holds something is only overwritten after asking", async () => {
    const page = await inExcel("1095");
    await page.getByRole("button", { name: "Put into the selected cell" }).first().click();
    await page.waitForSelector("text=Plan!B2 holds 1095");
    expect(await written(page)).toEqual([]);
    await page.getByRole("button", { name: "Replace it" }).click();
    await page.waitForSelector("text=Written into Plan!B2.");
    expect((await written(page)).length).toBe(1);
    await page.context().close();
  });

  test("the steel is taken from the selected cell, and the pane follows Excel's dark colours", async () => {
    const page = await inExcel("52100");
    await choose(page, "Steels");
    await page.getByRole("button", { name: "Take it from the selected cell" }).click();
    await page.waitForSelector('h3:text-is("52100")');
    expect(await page.locator("#pane").getAttribute("data-theme")).toBe("dark");
    await page.context().close();
  });
});
