import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { cellName } from "../../src/formula/addresses";
import { momentText } from "../../src/workbook/share/moments";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { stepOf } from "../../src/workbook/sheets/run-progress";
import { Hands } from "../workbench/hands";
import { EIGHT_LINES, type Entry, TypedPlan } from "../workbook/typed-run";
import { pdfPictures } from "./pdf-pictures";

const ERROR = /^#(?:N\/A|VALUE!|REF!|NAME\?|DIV\/0!|NUM!|NULL!|SPILL!)/;

/** What a run typed in the browser took. */
export interface BrowserRun {
  readonly typed: number;
  /** Seconds from the first key to the last, of which keys and moves themselves take the most. */
  readonly typingS: number;
  /** Seconds from the last key until nothing changed any more. */
  readonly waitedS: number;
  /** Cells of the finished plan that show an error. */
  readonly errors: readonly string[];
  /** Cells that do not hold what was typed. */
  readonly wrong: readonly string[];
}

export async function showSheet(page: Page, name: string): Promise<void> {
  const tab = page.locator("#sheets button", { hasText: new RegExp(`^${name}$`) });
  if (!(await tab.isVisible())) await page.click(`#steps [data-step="${stepOf(name) ?? "Other sheets"}"]`);
  await tab.click();
  await page.waitForTimeout(300);
}

/** What every cell of the sheet in front shows. */
async function shownCells(page: Page): Promise<string[][]> {
  await page.click("#as-table");
  const rows = await page
    .locator("#table tbody tr")
    .evaluateAll((found) =>
      found.map((row) => [...row.querySelectorAll("td")].map((cell) => cell.textContent ?? "")),
    );
  await page.click("#as-table");
  return rows;
}

/** Waits until the sheet in front shows the same twice. */
async function untilStill(page: Page): Promise<void> {
  let before = "";
  for (let look = 0; look < 120; look += 1) {
    const now = JSON.stringify(await shownCells(page));
    if (now === before) return;
    before = now;
    await page.waitForTimeout(500);
  }
}

async function typeAll(page: Page, plan: TypedPlan): Promise<Place[]> {
  const places: Place[] = [];
  const hands = new Hands(page);
  let front = "";
  for (const [at, entry] of EIGHT_LINES.entries()) {
    const { row, column } = plan.type(entry);
    const next = EIGHT_LINES[at + 1];
    if (entry[0] !== front) {
      front = entry[0];
      await showSheet(page, front);
      await hands.settle();
    }
    await hands.go(row, column);
    const staysInRow = next?.[0] === entry[0] && next[1] === entry[1] && entry[0] === "Lines";
    await hands.type(asTyped(entry), staysInRow ? "Tab" : "Enter");
    places.push({ entry, row, column });
  }
  return places;
}

interface Place {
  readonly entry: Entry;
  readonly row: number;
  readonly column: number;
}

/** Days of the calendar lie above these figures; nobody types a day as a figure. */
const FIRST_DAY = 40_000;

const asTyped = ([, , , content]: Entry) =>
  typeof content === "number" && content > FIRST_DAY
    ? (momentText(content, "date", false) ?? String(content))
    : String(content);

function shows(text: string, entry: Entry): boolean {
  const typed = asTyped(entry);
  const figure = text.endsWith("%")
    ? Number(text.replace(/ ?%$/, "")) / 100
    : Number(text.replaceAll(",", ""));
  return text === typed || figure === Number(typed);
}

/** Cells that show something else than what was typed into them. */
async function wrongCells(page: Page, places: readonly Place[]): Promise<string[]> {
  const wrong: string[] = [];
  for (const name of new Set(places.map(({ entry }) => entry[0]))) {
    await showSheet(page, name);
    const rows = await shownCells(page);
    for (const { entry, row, column } of places.filter((place) => place.entry[0] === name)) {
      const text = rows[row]?.[column] ?? "";
      if (!shows(text, entry))
        wrong.push(`${name}!${cellName(row, column)}: "${asTyped(entry)}" shows "${text}"`);
    }
  }
  return wrong;
}

async function errorsOn(page: Page, sheets: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  for (const name of sheets) {
    await showSheet(page, name);
    const rows = await shownCells(page);
    for (const [row, cells] of rows.entries())
      for (const [column, text] of cells.entries())
        if (ERROR.test(text)) found.push(`${name} row ${row + 1}, column ${column + 1}: ${text}`);
  }
  return found;
}

/** Types the run of eight lines into a new plan, key by key, as a smith would. */
export async function typeEightLines(page: Page): Promise<BrowserRun> {
  await page.click("#new-run");
  await page.locator("#notice-words", { hasText: /new run/ }).waitFor({ timeout: 120_000 });
  const plan = new TypedPlan(planningTemplate());
  const began = performance.now();
  const places = await typeAll(page, plan);
  const typedBy = performance.now();
  await showSheet(page, "Costs");
  await untilStill(page);
  const stillBy = performance.now();
  const errors = await errorsOn(
    page,
    plan.workbook.sheets.map(({ name }) => name),
  );
  plan.dispose();
  return {
    typed: plan.typed,
    typingS: (typedBy - began) / 1000,
    waitedS: (stillBy - typedBy) / 1000,
    errors,
    wrong: await wrongCells(page, places),
  };
}

/** Prints every paper of the plan from the page, and makes a picture of each page of it. @returns Pages by paper. */
export async function printPapers(page: Page, folder: string): Promise<Map<string, number>> {
  await page.click("#print");
  await page.locator(".print-view").waitFor();
  const choice = page.locator(".print-view select");
  const papers = await choice.locator("optgroup").first().locator("option").allTextContents();
  const pages = new Map<string, number>();
  for (const paper of papers) {
    await choice.selectOption(paper);
    await page.waitForTimeout(400);
    const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    const name = paper.toLowerCase().replaceAll(" ", "-");
    writeFileSync(join(folder, `${name}.pdf`), pdf);
    pages.set(paper, pdfPictures(folder, name));
  }
  await page.keyboard.press("Escape");
  return pages;
}
