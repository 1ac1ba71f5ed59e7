import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { launch } from "../browser";
import { openPage, startServer } from "../workbench/server";
import { type BrowserRun, printPapers, showSheet, typeEightLines } from "./browser-run";

/** Sizes of the window in CSS pixels; 200 % zoom of 1280 × 800 leaves a page of 640 × 400. */
const SIZES = [
  ["1280", 1280, 800],
  ["1920", 1920, 1080],
  ["820", 820, 1180],
  ["400", 400, 860],
  ["zoom-200", 640, 400],
] as const;

/** The pane over the sheet, where the page is too narrow for both. */
async function drawer(page: Page, path: string): Promise<void> {
  if (await page.locator("#pane").isVisible()) return;
  await page.click("#toggle-pane");
  await page.waitForTimeout(300);
  await page.screenshot({ path });
  await page.click("#toggle-pane");
}

/** The page in each size and in the dark, with how far down the grid begins. */
async function sizes(page: Page, folder: string): Promise<void> {
  for (const scheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme: scheme });
    for (const [name, width, height] of SIZES) {
      await page.setViewportSize({ width, height });
      await page.waitForTimeout(600);
      await page.screenshot({ path: join(folder, `page-${name}-${scheme}.png`) });
      await drawer(page, join(folder, `drawer-${name}-${scheme}.png`));
      const top = (await page.locator("#grid").boundingBox())?.y ?? 0;
      console.log(
        `${name} ${scheme}: grid from ${top} px of ${height} (${Math.round((top / height) * 100)} %)`,
      );
    }
  }
  await page.emulateMedia({ colorScheme: "light" });
  await page.setViewportSize({ width: 1280, height: 800 });
}

async function sheets(page: Page, folder: string, prefix: string): Promise<void> {
  const names = await page.locator("#sheets button").allTextContents();
  for (const name of names) {
    await showSheet(page, name);
    await page.waitForTimeout(400);
    await page.screenshot({ path: join(folder, `${prefix}-${name.toLowerCase().replaceAll(" ", "-")}.png`) });
  }
}

/** What opens over the sheet, in the dark: menus, dialogs, the sheet as a table and on paper. */
async function overlays(page: Page, folder: string): Promise<void> {
  await page.emulateMedia({ colorScheme: "dark" });
  await showSheet(page, "Lines");
  const { x = 0, y = 0 } = (await page.locator("#grid").boundingBox()) ?? {};
  const shot = async (name: string, close: () => Promise<unknown>) => {
    await page.waitForTimeout(600);
    await page.screenshot({ path: join(folder, `over-${name}.png`) });
    await close();
  };
  const leave = () => page.keyboard.press("Escape");
  await page.mouse.click(x + 15, y + 310, { button: "right" });
  await shot("right-button", () => page.mouse.click(x + 300, y + 310));
  await page.click("#rows");
  await shot("rows", () => page.getByRole("menuitem", { name: /^Filter/ }).click());
  await shot("filter", leave);
  for (const name of ["share", "answers"]) {
    await page.click(`#${name}`);
    await shot(name, leave);
  }
  await page.click("#as-table");
  await shot("table", () => page.click("#as-table"));
  await page.click("#print");
  await shot("print", leave);
  await page.emulateMedia({ colorScheme: "light" });
}

function tell({ typed, typingS, waitedS, errors, wrong }: BrowserRun): void {
  console.log(
    `typed ${typed} cells in ${(typingS / 60).toFixed(1)} min, then waited ${waitedS.toFixed(1)} s`,
  );
  console.log(`cells in error: ${errors.length}`, errors.slice(0, 20));
  console.log(`cells that show something else than what was typed: ${wrong.length}`, wrong.slice(0, 20));
}

async function picturesOf(browser: Browser, address: string, folder: string): Promise<void> {
  const { page, complaints } = await openPage(browser, address);
  await page.locator("#pane .following li").first().waitFor({ timeout: 120_000 });
  await sizes(page, folder);
  await sheets(page, folder, "demo");
  await overlays(page, folder);
  tell(await typeEightLines(page));
  await sheets(page, folder, "eight");
  for (const [paper, pages] of await printPapers(page, folder)) console.log(`${paper}: ${pages} page(s)`);
  if (complaints.length > 0) console.log("the page complained:", complaints);
}

/** Pictures of every sheet and of the page in every size, the run of eight lines typed by keyboard, and its papers. */
export async function allPictures(folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const [{ server, address }, browser] = await Promise.all([startServer(), launch()]);
  try {
    await picturesOf(browser, address, folder);
    console.log(`pictures in ${folder}`);
  } finally {
    await browser.close();
    server.kill();
  }
}
