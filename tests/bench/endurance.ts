/**
 * Scripted editing of a filled plan in the workbench for a long time: how far its memory grows, and whether every line
 * still says what was typed last. By itself:
 *
 *   node src/cli/start.cjs tests/bench/endurance.ts [MINUTES]
 *
 * 30 minutes unless another number is given; exit status 1 where memory grew beyond the limit, a cell says something
 * else or the page complained.
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { CDPSession, Page } from "playwright-core";
import { lineCell } from "../../src/workbook/sheets/lines-sheet";
import { stepOf } from "../../src/workbook/sheets/run-progress";
import { launch } from "../browser";
import { openPage, startServer } from "../workbench/server";
import { filledPlan } from "./filled-plan";

const USUAL_MINUTES = 30;
const LIMIT = 1.5;
/** Caches fill first: growth counts from after this share of the time. */
const WARM_UP = 0.1;
const SAMPLES = 30;
const LINES = 60;
/** A cell below the table, which no line needs. */
const FREE_CELL = "B120";

const STEELS = ["52100", "80CrV2", "1075", "C60", "51CrV4", "5160", "1084", "1095", "no such steel"];
const SHEETS = ["Steel and heats", "Heat batches", "Costs", "Lines"];

async function goTo(page: Page, address: string): Promise<void> {
  await page.fill("#cell-address", address);
  await page.press("#cell-address", "Enter");
}

async function enter(page: Page, address: string, text: string): Promise<void> {
  await goTo(page, address);
  await page.fill("#cell-content", text);
  await page.press("#cell-content", "Enter");
}

const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();

async function show(page: Page, sheet: string): Promise<void> {
  await page.click(`#steps [data-step="${stepOf(sheet)}"]`);
  await page.locator("#sheets").getByRole("button", { name: sheet, exact: true }).click();
}

/** What the cells hold that were typed in, by address. */
type Typed = Map<string, string>;

/** One round of what a smith does: steels and tempers, a formula, a step back and forth, other sheets, the table. */
async function round(page: Page, count: number, typed: Typed): Promise<void> {
  const line = count % LINES;
  const cells = [
    [lineCell(line, "steel"), STEELS[count % STEELS.length] ?? "1095"],
    [lineCell(line, "aim"), String(48 + (count % 12))],
  ] as const;
  for (const [address, text] of cells) {
    await enter(page, address, text);
    typed.set(address, text);
  }
  await enter(page, FREE_CELL, `=BLADE.COMPOSITION("${STEELS[count % 8]}")`);
  await press(page, "Undo");
  await press(page, "Redo");
  await enter(page, FREE_CELL, "");
  const sheet = SHEETS[count % SHEETS.length] ?? "";
  await show(page, sheet);
  if (count % 5 === 0) {
    await press(page, "Read as table");
    await press(page, "Read as table");
  }
  await show(page, "Lines");
}

/** Bytes of JavaScript memory in use once rubbish is cleared away. */
async function memory(cdp: CDPSession): Promise<number> {
  await cdp.send("HeapProfiler.collectGarbage");
  return (await cdp.send("Runtime.getHeapUsage")).usedSize;
}

interface Sample {
  /** Share of the time that has passed. */
  readonly at: number;
  readonly rounds: number;
  readonly bytes: number;
}

async function edit(page: Page, milliseconds: number, typed: Typed): Promise<Sample[]> {
  const cdp = await page.context().newCDPSession(page);
  const started = Date.now();
  const samples: Sample[] = [];
  for (let rounds = 0; ; rounds += 1) {
    const at = (Date.now() - started) / milliseconds;
    if (at * SAMPLES >= samples.length || at >= 1) {
      const bytes = await memory(cdp);
      samples.push({ at, rounds, bytes });
      console.log(`${Math.round(at * 100)} %, ${rounds} rounds: ${(bytes / 2 ** 20).toFixed(1)} MB`);
    }
    if (at >= 1) return samples;
    await round(page, rounds, typed);
  }
}

function growth(samples: readonly Sample[]): number {
  const first = samples.find(({ at }) => at >= WARM_UP) ?? samples[0];
  const last = samples.at(-1);
  return (last?.bytes ?? Number.NaN) / (first?.bytes ?? Number.NaN);
}

/** The cells of Lines that do not say what was typed last. */
async function wrongCells(page: Page, typed: Typed): Promise<string[]> {
  const wrong: string[] = [];
  for (const [address, text] of typed) {
    await goTo(page, address);
    const says = await page.inputValue("#cell-content");
    if (says !== text) wrong.push(`${address} says "${says}", not "${text}"`);
  }
  return wrong;
}

async function openPlan(page: Page): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "endurance-"));
  const file = join(folder, "plan.xlsx");
  writeFileSync(file, await filledPlan(LINES));
  await page.setInputFiles("#file", file);
  await page.locator("#notice-words", { hasText: "Opened" }).waitFor();
  rmSync(folder, { recursive: true });
  await show(page, "Lines");
}

async function endurance(minutes: number): Promise<number> {
  const [{ server, address }, browser] = await Promise.all([startServer(), launch()]);
  try {
    const { page, complaints } = await openPage(browser, address);
    await openPlan(page);
    const typed: Typed = new Map();
    const samples = await edit(page, minutes * 60_000, typed);
    const wrong = await wrongCells(page, typed);
    const ratio = growth(samples);
    const rounds = samples.at(-1)?.rounds ?? 0;
    console.log(
      `${LINES} lines, memory after ${minutes} min and ${rounds} rounds: ${ratio.toFixed(2)} times that after the warm-up ` +
        `(limit ${LIMIT}); ${wrong.length} of ${typed.size} cells wrong`,
    );
    for (const cell of wrong) console.log(cell);
    for (const complaint of complaints) console.log(`the page complained: ${complaint}`);
    return ratio <= LIMIT && complaints.length === 0 && wrong.length === 0 ? 0 : 1;
  } finally {
    await browser.close();
    server.kill();
  }
}

const [wanted] = process.argv.slice(2);
const minutes = wanted === undefined ? USUAL_MINUTES : Number(wanted);
if (Number.isFinite(minutes) && minutes > 0) {
  endurance(minutes).then(
    (status) => process.exit(status),
    (fault) => {
      console.error(fault);
      process.exit(1);
    },
  );
} else {
  console.error(`minutes: "${wanted}" is no number above 0`);
  process.exit(2);
}
