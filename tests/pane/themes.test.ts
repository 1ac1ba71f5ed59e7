import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { PAGES as PAGE_LIST } from "../../src/taskpane/page-list";
import { violations } from "../axe";
import { launch } from "../browser";
import { choose, drawn, type OpenPane, openDisclosures, openPane, overflow } from "./open-pane";
import { type ServedFolder, serveFolder } from "./static-server";

const PAGES = Object.values(PAGE_LIST).map(({ title }) => title);
/** `SCREENS=1` keeps a picture of each page here, to be looked at. */
const PICTURES = "node_modules/.cache/screens";
const KEEPS_PICTURES = process.env.SCREENS !== undefined;
/** Milliseconds for a walk through every page. */
const WALK = 240_000;

const THEMES: Readonly<Record<string, Parameters<Page["emulateMedia"]>[0]>> = {
  light: { colorScheme: "light", forcedColors: "none" },
  dark: { colorScheme: "dark", forcedColors: "none" },
  "high contrast": { colorScheme: "dark", forcedColors: "active" },
};

let browser: Browser;
let served: ServedFolder;

beforeAll(async () => {
  if (KEEPS_PICTURES) mkdirSync(PICTURES, { recursive: true });
  served = await serveFolder(inject("pages"));
  browser = await launch();
});

afterAll(async () => {
  await browser?.close();
  served?.close();
});

/** The width at which axe looks: its rules know colours and names, which are the same at any. */
const LOOKED_INTO = 350;
const WIDTHS = [LOOKED_INTO, 400];

/** Looks at the page that is open, at each width in one theme. */
async function lookAt(page: Page, name: string, theme: string): Promise<void> {
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 720 });
    await drawn(page);
    expect(await overflow(page), `${name} ${theme} ${width}`).toBe(0);
    if (KEEPS_PICTURES)
      await page.screenshot({
        path: join(PICTURES, `${name}-${width}-${theme}.png`.replaceAll(" ", "-")),
        fullPage: true,
      });
    if (width === LOOKED_INTO)
      expect(await violations(page, { coloursOnly: theme !== "light" }), `${name} ${theme}`).toEqual([]);
  }
}

describe("in light, dark and high contrast", () => {
  let opened: OpenPane;

  // The page follows the theme by style sheets alone: it is opened once.
  beforeAll(async () => {
    opened = await openPane(browser, { served, options: { viewport: { width: LOOKED_INTO, height: 720 } } });
  });

  test.each(PAGES)("%s fits 350 and 400 pixels, and axe finds nothing", { timeout: WALK }, async (name) => {
    const { page, problems } = opened;
    await choose(page, name);
    await openDisclosures(page);
    for (const [theme, media] of Object.entries(THEMES)) {
      await page.emulateMedia(media);
      await lookAt(page, name, theme);
    }
    expect(problems).toEqual([]);
  });
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
