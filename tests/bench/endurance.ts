/**
 * Scripted editing of the workbench for a long time, and how far its memory grows. By itself:
 *
 *   node src/cli/start.cjs tests/bench/endurance.ts [MINUTES]
 *
 * 30 minutes unless another number is given; exit status 1 where memory grew beyond the limit.
 */
import type { CDPSession, Page } from "playwright-core";
import { lineCell } from "../../src/workbook/sheets/lines-sheet";
import { stepOf } from "../../src/workbook/sheets/run-progress";
import { launch } from "../browser";
import { openPage, startServer } from "../workbench/server";

const USUAL_MINUTES = 30;
const LIMIT = 1.5;
/** Caches fill first: growth counts from after this share of the time. */
const WARM_UP = 0.1;
const SAMPLES = 30;

const STEELS = ["52100", "80CrV2", "1075", "C60", "51CrV4", "5160", "1084", "1095", "no such steel"];
const SHEETS = ["Steel and heats", "Coupons", "Costs", "Lines"];

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

/** One round of what a smith does: steels and tempers, a formula, a step back and forth, other sheets, the table. */
async function round(page: Page, count: number): Promise<void> {
  const line = count % 6;
  await enter(page, lineCell(line, "steel"), STEELS[count % STEELS.length] ?? "1095");
  await enter(page, lineCell(line, "aim"), String(48 + (count % 12)));
  await enter(page, "B20", `=BLADE.COMPOSITION("${STEELS[count % 8]}")`);
  await press(page, "Undo");
  await press(page, "Redo");
  await enter(page, "B20", "");
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

async function edit(page: Page, milliseconds: number): Promise<Sample[]> {
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
    await round(page, rounds);
  }
}

function growth(samples: readonly Sample[]): number {
  const first = samples.find(({ at }) => at >= WARM_UP) ?? samples[0];
  const last = samples.at(-1);
  return (last?.bytes ?? Number.NaN) / (first?.bytes ?? Number.NaN);
}

async function endurance(minutes: number): Promise<number> {
  const [{ server, address }, browser] = await Promise.all([startServer(), launch()]);
  try {
    const { page, complaints } = await openPage(browser, address);
    const samples = await edit(page, minutes * 60_000);
    const ratio = growth(samples);
    const rounds = samples.at(-1)?.rounds ?? 0;
    console.log(
      `memory after ${minutes} min and ${rounds} rounds: ${ratio.toFixed(2)} times that after the warm-up (limit ${LIMIT})`,
    );
    for (const complaint of complaints) console.log(`the page complained: ${complaint}`);
    return ratio <= LIMIT && complaints.length === 0 ? 0 : 1;
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
