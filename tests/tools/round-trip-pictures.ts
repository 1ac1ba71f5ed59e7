import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import {
  asFile,
  chooseOne,
  handOut,
  openFile,
  type PageFile,
  readAnswers,
  shareDialog,
  takeTicked,
} from "../workbench/answer-steps";
import { openPage, SIZE } from "../workbench/server";
import { filledIn } from "../workbook/answers/fill";
import { ANSWERS_TO_R07 } from "../workbook/answers/invented-answers";
import { planR07 } from "../workbook/answers/plans";

const FOLDER = "assets/pictures/guide";

const shot = (name: string) => join(FOLDER, `${name}.png`);

/** Pixels: as wide as the columns that are shown, as high as their rows. */
const WIDE = { width: 1700, height: 560 };

async function showSheet(page: Page, step: string, name: string): Promise<void> {
  const tab = page.locator("#sheets button", { hasText: new RegExp(`^${name}$`) });
  if (!(await tab.isVisible())) await page.click(`#steps [data-step="${step}"]`);
  await tab.click();
  // The grid draws a sheet anew some frames after its tab was pressed.
  await page.waitForTimeout(2000);
}

/** Every copy out of R-07, answered; a picture of the dialog on the way. */
async function copiesAnswered(page: Page): Promise<PageFile[]> {
  const back: PageFile[] = [];
  for (const { whom, name, answers, head } of ANSWERS_TO_R07) {
    const dialog = await shareDialog(page);
    await chooseOne(dialog, whom, name);
    if (back.length === 0) await dialog.screenshot({ path: shot("share-copy") });
    const { copy } = await handOut(page, dialog);
    back.push(asFile(`${name.toLowerCase().replace(/\W+/g, "-")}.xlsx`, await filledIn(copy, answers, head)));
  }
  return back;
}

/** The way of R-07's orders out and home in the workbench, in five pictures for the guide. */
export async function roundTripPictures(browser: Browser, address: string): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  const { page } = await openPage(browser, address);
  const bytes = await planR07();
  await openFile(page, "Run R-07.xlsx", bytes);
  const back = await copiesAnswered(page);
  const { dialog, counts } = await readAnswers(page, back);
  await dialog.screenshot({ path: shot("answers-in") });
  await takeTicked(page, dialog, counts.fine);
  await page.setViewportSize(WIDE);
  await showSheet(page, "Buying", "Steel and heats");
  await page.locator("#grid").screenshot({ path: shot("plan-after") });
  await page.setViewportSize(SIZE);
  await showSheet(page, "Buying", "Best offer");
  await page.locator("#grid").screenshot({ path: shot("offers") });
  const [, order] = back;
  if (order === undefined) throw new Error("no answered order");
  await openFile(page, order.name, order.buffer);
  await page.setViewportSize({ ...WIDE, height: 480 });
  await showSheet(page, "Other sheets", "Answer to order");
  await page.locator("#grid").screenshot({ path: shot("answered-order") });
  await page.context().close();
}
