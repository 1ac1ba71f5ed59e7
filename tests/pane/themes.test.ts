import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { PAGES as PAGE_LIST } from "../../src/taskpane/page-list";
import { violations } from "../axe";
import { launch } from "../browser";
import { choose, openDisclosures, openPane, overflow } from "./open-pane";
import { type ServedFolder, serveFolder } from "./static-server";

const PAGES = Object.values(PAGE_LIST).map(({ title }) => title);
/** Kept after the tests, to be looked at. */
const PICTURES = "node_modules/.cache/screens";
/** Milliseconds for a walk through every page. */
const WALK = 240_000;

const THEMES: Readonly<Record<string, BrowserContextOptions>> = {
  light: { colorScheme: "light" },
  dark: { colorScheme: "dark" },
  "high contrast": { colorScheme: "dark", forcedColors: "active" },
};

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

/** The width at which axe looks: its rules know colours and names, which are the same at any. */
const LOOKED_INTO = 350;

describe.each(Object.keys(THEMES))("%s", (theme) => {
  test.each([LOOKED_INTO, 400])(
    "every page fits %i pixels, and axe finds nothing",
    { timeout: WALK },
    async (width) => {
      const options = { viewport: { width, height: 720 }, ...THEMES[theme] };
      const look = { coloursOnly: theme !== "light" };
      const { page, problems } = await openPane(browser, { served, options });
      for (const name of PAGES) {
        await choose(page, name);
        await openDisclosures(page);
        const picture = `${name}-${width}-${theme}.png`.replaceAll(" ", "-");
        await page.screenshot({ path: join(PICTURES, picture), fullPage: true });
        expect(await overflow(page), name).toBe(0);
        if (width === LOOKED_INTO) expect(await violations(page, look), name).toEqual([]);
      }
      expect(problems).toEqual([]);
      await page.context().close();
    },
  );
});

/** What the keyboard stands on: a word for it, and whether the browser shows where it is. */
interface Stop {
  readonly what: string;
  readonly isShown: boolean;
}

/** Notes each place where the keyboard has been. */
function noteStops(): void {
  const stops = new Map<Element, Stop>();
  Object.assign(window, { stops });
  document.addEventListener("focusin", ({ target }) => {
    if (!(target instanceof HTMLElement)) return;
    const { outlineStyle, outlineWidth } = getComputedStyle(target);
    const what = `${target.tagName} ${target.getAttribute("aria-label") ?? target.textContent ?? ""}`;
    const isShown = outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2;
    stops.set(target, { what, isShown });
  });
}

/** Everything that a pointer can use and that is to be seen. */
function usable(): string[] {
  const controls = document.querySelectorAll<HTMLElement>(
    "a[href], button, input, select, textarea, summary",
  );
  return [...controls]
    .filter((control) => control.checkVisibility() && !control.matches(":disabled"))
    .map(
      (control) => `${control.tagName} ${control.getAttribute("aria-label") ?? control.textContent ?? ""}`,
    );
}

describe("the keyboard", () => {
  let page: Page;

  beforeAll(async () => {
    ({ page } = await openPane(browser, { served }));
  });

  test.each(PAGES)("alone reaches all of %s, and shows where it is", async (name) => {
    await choose(page, name);
    const wanted = await page.evaluate(usable);
    await page.evaluate(noteStops);
    // The press on the page's name left the keyboard there: past the last control it begins again at the first.
    for (let press = 0; press < wanted.length + 2; press += 1) await page.keyboard.press("Tab");
    const stops = await page.evaluate<Stop[]>("[...window.stops.values()]");
    expect(stops.map(({ what }) => what).sort()).toEqual([...wanted].sort());
    expect(stops.filter(({ isShown }) => !isShown)).toEqual([]);
  });
});
