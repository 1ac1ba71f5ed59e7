import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { catalogue } from "../../src/functions/catalogue";
import { PAGES as PAGE_LIST } from "../../src/taskpane/page-list";
import { launch } from "../browser";
import { choose, openDisclosures, openPane, overflow } from "./open-pane";
import { type ServedFolder, serveFolder } from "./static-server";

/** Titles of every page: one that is added is walked too. */
const PAGES = Object.values(PAGE_LIST).map(({ title }) => title);

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

  test("every function is registered before anything of the page is there to be drawn", async () => {
    const before = async (page: Page) => {
      await page.addInitScript(`
        new MutationObserver((_, observer) => {
          if (document.body === null) return;
          observer.disconnect();
          window.registeredBeforeBody = Object.keys(CustomFunctions._association.mappings).length;
        }).observe(document, { childList: true, subtree: true });`);
    };
    const { page } = await openPane(browser, { served, before });
    expect(await page.evaluate("window.registeredBeforeBody")).toBe(catalogue.length);
    await page.context().close();
  });

  test("its policy allows nothing but its own files, and nothing of ours goes against it", async () => {
    const { page, outside, kept } = await openPane(browser, { served });
    const policy = await page.getAttribute('meta[http-equiv="Content-Security-Policy"]', "content");
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toMatch(/unsafe|\*|https?:/);
    for (const name of PAGES) {
      await choose(page, name);
      await openDisclosures(page);
    }
    expect(await kept()).toEqual([]);
    expect(outside).toEqual([]);
    // The policy is in force: a script put into the page does not run.
    await page.evaluate(() => {
      const script = document.createElement("script");
      script.textContent = "window.ranAnyway = true";
      document.body.append(script);
    });
    expect(await page.evaluate("window.ranAnyway")).toBeUndefined();
    expect((await kept()).join()).toContain("script-src-elem inline");
    await page.context().close();
  });

  test("once it has loaded, every page opens without the network", async () => {
    const { page, problems } = await openPane(browser, { served });
    await page.waitForLoadState("networkidle");
    await page.context().setOffline(true);
    for (const name of PAGES) {
      await choose(page, name);
      expect(await page.locator('.refusal[role="alert"]').count(), name).toBe(0);
    }
    expect(problems).toEqual([]);
    await page.context().close();
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
    const [, second = ""] = PAGES;
    await page.waitForSelector(`h2:text-is("${second}")`);
    const marked = page.locator('nav [aria-current="page"]');
    expect(await marked.allTextContents()).toEqual([second]);
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
    await choose(page, "Steels");
    expect(await page.locator("h3").first().textContent()).toBe("1095");
    expect(problems.filter((problem) => !/ERR_FAILED/.test(problem))).toEqual([]);
    await page.context().close();
  });
});
