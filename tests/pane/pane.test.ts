import { mkdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import AxeBuilder from "@axe-core/playwright";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { catalogue } from "../../src/functions/catalogue";
import { launch } from "../browser";
import { choose, openPane } from "./open-pane";
import { type ServedFolder, serveFolder } from "./static-server";

const PAGES = ["Steels", "Hardness bands", "Hardening and tempering", "Cautions", "Functions", "About"];
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

/** How far the page runs past the right edge, in pixels. */
async function overflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Opens what is closed, but for the long list of functions, of which two stand for all. */
async function openDisclosures(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const [at, details] of [...document.querySelectorAll("details")].entries()) {
      details.open = at < 2 || !details.classList.contains("function");
    }
  });
  await page.waitForTimeout(100);
}

async function violations(page: Page): Promise<string[]> {
  const { violations: found } = await new AxeBuilder({ page }).analyze();
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
}

describe("the pane with the npm copy of office.js, outside Excel", () => {
  test("loads without a fault, asks for nothing elsewhere, and registers every function", async () => {
    const { page, problems, outside } = await openPane(browser, { served });
    await page.waitForTimeout(1000);
    expect(problems).toEqual([]);
    expect(outside).toEqual([]);
    const registered = await page.evaluate("Object.keys(CustomFunctions._association.mappings).length");
    expect(registered).toBe(catalogue.length);
    expect(await page.locator(".notice").textContent()).toContain("open it from the Home tab in Excel");
    await page.context().close();
  });

  describe.each([
    [320, "light"],
    [320, "dark"],
    [400, "light"],
  ] as const)("%i pixels, %s", (width, colorScheme) => {
    test.each(PAGES)("%s fits, and axe finds nothing", async (name) => {
      const options = { viewport: { width, height: 720 }, colorScheme };
      const { page, problems } = await openPane(browser, { served, options });
      await choose(page, name);
      await openDisclosures(page);
      const picture = `${name.replaceAll(" ", "-")}-${width}-${colorScheme}.png`;
      await page.screenshot({ path: join(PICTURES, picture), fullPage: true });
      expect(await overflow(page)).toBe(0);
      expect(await violations(page)).toEqual([]);
      expect(problems).toEqual([]);
      await page.context().close();
    });
  });

  test("a 400-pixel pane at 200 % zoom does not scroll sideways", async () => {
    const { page } = await openPane(browser, { served, options: { viewport: { width: 200, height: 360 } } });
    for (const name of PAGES) {
      await choose(page, name);
      expect(await overflow(page), name).toBe(0);
    }
    await page.context().close();
  });

  test("pages are reached by keyboard, and the open one is marked", async () => {
    const { page } = await openPane(browser, { served });
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.waitForSelector('h2:text-is("Hardness bands")');
    const marked = page.locator('nav [aria-current="page"]');
    expect(await marked.allTextContents()).toEqual(["Hardness bands"]);
    await page.context().close();
  });
});

describe("without office.js", () => {
  test("a notice says so, and the figures still work", async () => {
    const before = async (page: Page) => {
      await page.route(/office\/office\.js/, (route) => route.abort());
    };
    const { page, problems } = await openPane(browser, { served, before });
    expect(await page.locator(".notice").textContent()).toMatch(/office\.js\) could not be loaded/);
    expect(await page.locator("h3").first().textContent()).toBe("1095");
    expect(problems.filter((problem) => !/ERR_FAILED/.test(problem))).toEqual([]);
    await page.context().close();
  });
});
