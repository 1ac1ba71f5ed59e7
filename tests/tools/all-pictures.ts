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

/** The page in each size and in the dark, with how far down the grid begins. */
async function sizes(page: Page, folder: string): Promise<void> {
  for (const scheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme: scheme });
    for (const [name, width, height] of SIZES) {
      await page.setViewportSize({ width, height });
      await page.waitForTimeout(600);
      await page.screenshot({ path: join(folder, `page-${name}-${scheme}.png`) });
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
