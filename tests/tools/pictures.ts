import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { exampleData } from "../../src/workbook/sheets/template-data";
import { launch } from "../browser";
import { converted } from "../interchange/office";
import { openPage, startServer } from "../workbench/server";
import { allPictures } from "./all-pictures";
import { roundTripPictures } from "./round-trip-pictures";

const FOLDER = "assets/pictures";
const LINE_KNOWN_MS = 120_000;

/** Chooses a page of the pane by its title. */
async function choose(page: Page, title: string): Promise<void> {
  await page.locator("#pane nav").getByRole("button", { name: title, exact: true }).click();
  await page.locator("#pane h2", { hasText: title }).waitFor();
}

/** The workbench on the demo run, one page of its pane, and the pictures of the guide. */
async function screens(isGuideAlone: boolean): Promise<void> {
  const [{ server, address }, browser] = await Promise.all([startServer(), launch()]);
  try {
    await roundTripPictures(browser, address);
    if (isGuideAlone) return;
    const { page } = await openPage(browser, address);
    await page.locator("#pane .following li").first().waitFor({ timeout: LINE_KNOWN_MS });
    await page.screenshot({ path: join(FOLDER, "workbench.png") });
    await choose(page, "Hardening and tempering");
    await page.locator("#pane svg").first().waitFor();
    await page.locator("#pane").screenshot({ path: join(FOLDER, "pane.png") });
  } finally {
    await browser.close();
    server.kill();
  }
}

/** The heat-treat order of the invented run, as LibreOffice prints it. */
async function paper(): Promise<void> {
  const plan = await planningFile(planningTemplate(exampleData()));
  const { bytes } = await shareCopy(plan, {
    choice: { kind: "sheets", names: ["Heat-treat order"] },
    date: "R-07",
  });
  const [pdf] = converted("order.xlsx", bytes, "pdf").values();
  if (pdf === undefined) throw new Error("LibreOffice made no PDF");
  const folder = mkdtempSync(join(tmpdir(), "paper-"));
  writeFileSync(join(folder, "order.pdf"), pdf);
  const shot = join(FOLDER, "paper");
  const options = ["-png", "-r", "72", "-f", "1", "-l", "1", "-singlefile"];
  const { status } = spawnSync("pdftoppm", [...options, join(folder, "order.pdf"), shot]);
  rmSync(folder, { recursive: true });
  if (status !== 0) throw new Error("pdftoppm made no picture");
}

/** The pictures of README and of the guide, made anew. The paper needs LibreOffice and pdftoppm. */
async function pictures(isGuideAlone: boolean): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  await screens(isGuideAlone);
  if (!isGuideAlone) await paper();
}

const [choice, folder] = process.argv.slice(2);

/**
 * `npm run pictures`; `-- --guide` takes those of the guide alone, `-- --paper` the paper alone, `-- --all FOLDER` every
 * sheet, the page at every size, and the run of eight lines with its papers.
 */
async function chosen(): Promise<void> {
  if (choice === "--all") return allPictures(folder ?? join(tmpdir(), "pictures"));
  return choice === "--paper" ? paper() : pictures(choice === "--guide");
}

chosen().catch((fault) => {
  console.error(fault);
  process.exit(1);
});
