import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { lineCell } from "../../src/workbook/sheets/lines-sheet";
import { launch } from "../browser";
import { startServer } from "../workbench/server";
import { filledPlan } from "./filled-plan";
import type { BenchLine } from "./line";
import { median } from "./measure";
import { PageLoad, type Taken } from "./page-load";

const CACHE = "node_modules/.cache/blade-metallurgy";
const EDITS = ["5160", "1095", "O1", "80CrV2", "52100"];
const TYPED = ["Hollow Hill", "Tern chef 210", "Alder", "Long word here"];
const KEY_MS = 30;

interface Plan {
  readonly what: string;
  /** Lines of a filled plan to open as a file; the demo and the template need none. */
  readonly lines?: number;
  readonly isNew?: boolean;
  readonly editBudget?: number;
  readonly openBudget?: number;
  readonly settleMs: number;
}

/** What was written into the field is kept before the entry itself is measured. */
const KEPT_MS = 800;
/** After an entry: its results, the pane, the steps below the grid and the keeping of the work. */
const SETTLE_MS = 1500;

/** One workbench page with a plan in it. */
class Bench {
  private constructor(
    private readonly page: Page,
    private readonly load: PageLoad,
  ) {}

  static async open(browser: Browser, address: string): Promise<Bench> {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    await context.grantPermissions(["clipboard-read", "clipboard-write"]);
    const page = await context.newPage();
    page.setDefaultTimeout(240_000);
    await page.goto(address);
    await page.locator("#cell-content:enabled").waitFor();
    await page.waitForTimeout(4000);
    return new Bench(page, await PageLoad.of(browser, page));
  }

  async openPlan({ isNew, settleMs }: Plan, file: string | undefined): Promise<number> {
    const { all } = await this.load.during(async () => {
      if (isNew === true) await this.page.click("#new-run");
      else if (file !== undefined) await this.page.setInputFiles("#file", file);
      await this.page.locator("#notice-words", { hasText: /new run|Opened/ }).waitFor();
    }, settleMs);
    return all;
  }

  async showLines(): Promise<void> {
    const tab = this.page.locator("#sheets button", { hasText: /^Lines$/ });
    if (!(await tab.isVisible())) await this.page.click('#steps [data-step="Planning"]');
    await tab.click();
  }

  private async select(address: string): Promise<void> {
    await this.page.fill("#cell-address", address);
    await this.page.press("#cell-address", "Enter");
    await this.page.waitForTimeout(500);
  }

  /** Processor time of one entry with all that follows, ms, the middle one of several. */
  async edit(address: string, entries: readonly string[] = EDITS): Promise<Taken> {
    await this.select(address);
    const times: Taken[] = [];
    for (const text of entries) {
      await this.page.fill("#cell-content", text);
      await this.page.waitForTimeout(KEPT_MS);
      times.push(await this.load.during(() => this.page.press("#cell-content", "Enter"), SETTLE_MS));
    }
    return { main: median(times.map(({ main }) => main)), all: median(times.map(({ all }) => all)) };
  }

  atRest(): Promise<Taken> {
    return this.load.atRest();
  }

  /** The longest task while entries are typed into the grid itself, ms. */
  async typing(): Promise<number> {
    const grid = await this.page.locator("#grid").boundingBox();
    await this.page.mouse.click((grid?.x ?? 0) + 90, (grid?.y ?? 0) + 230);
    await this.page.waitForTimeout(1500);
    return this.load.longestTask(async () => {
      for (const text of TYPED) {
        for (const letter of text) {
          await this.page.keyboard.press(letter === " " ? "Space" : letter);
          await this.page.waitForTimeout(KEY_MS);
        }
        await this.page.keyboard.press("Enter");
        await this.page.waitForTimeout(400);
      }
    });
  }

  async newSheet(): Promise<void> {
    await this.page.click("#new-sheet");
    await this.page.waitForTimeout(1500);
  }

  /** Copies 60 × 12 cells of the lines and pastes them on the sheet that is shown; processor time of the paste, ms. */
  async paste(): Promise<number> {
    await this.showLines();
    await this.select("A5");
    const grid = await this.page.locator("#grid").boundingBox();
    await this.page.mouse.click((grid?.x ?? 0) + 45, (grid?.y ?? 0) + 160);
    await this.page.waitForTimeout(500);
    for (let row = 1; row < 60; row += 1) await this.page.keyboard.press("Shift+ArrowDown");
    for (let column = 1; column < 12; column += 1) await this.page.keyboard.press("Shift+ArrowRight");
    await this.page.keyboard.press("Control+c");
    await this.page.waitForTimeout(1500);
    await this.newSheet();
    // A sheet more makes the worker begin with the workbook anew: that is none of the paste.
    await this.page.waitForTimeout(4000);
    const place = await this.page.locator("#grid").boundingBox();
    await this.page.mouse.click((place?.x ?? 0) + 60, (place?.y ?? 0) + 30);
    await this.page.waitForTimeout(1000);
    const { all } = await this.load.during(() => this.page.keyboard.press("Control+v"), 4000);
    return all;
  }

  close(): Promise<void> {
    return this.page.context().close();
  }
}

const ms = (what: string, value: number, budget?: number): BenchLine => ({ what, value, unit: "ms", budget });

async function linesOf(bench: Bench, plan: Plan, file: string | undefined, empty: Taken) {
  const { what, editBudget, openBudget } = plan;
  const lines: BenchLine[] = [];
  if (openBudget !== undefined) {
    const opened = await bench.openPlan(plan, file);
    lines.push({ what: `${what}, opened`, value: opened / 1000, unit: "s", budget: openBudget });
  }
  await bench.showLines();
  const { main, all } = await bench.edit(lineCell(1, "steel"));
  const rest = await bench.atRest();
  lines.push(
    ms(`${what}, an edit and its dependents`, all, editBudget),
    ms(`${what}, of it on the thread that answers keys`, main, editBudget),
    { what: `${what}, an edit against one on an empty sheet`, value: all / empty.all, unit: "×" },
    ms(`${what}, longest task while typing`, await bench.typing(), 30),
    ms(`${what}, a second of the page at rest`, rest.all),
  );
  return lines;
}

async function emptyEdit(bench: Bench): Promise<Taken> {
  await bench.newSheet();
  return bench.edit("B3", EDITS.slice(0, 3));
}

/** @param folder - Where the file of a plan may be written. */
async function measured(browser: Browser, address: string, plan: Plan, folder: string) {
  const file = plan.lines && join(folder, `plan-${plan.lines}.xlsx`);
  if (file) writeFileSync(file, await filledPlan(plan.lines ?? 0));
  const bench = await Bench.open(browser, address);
  try {
    const empty = await emptyEdit(bench);
    const lines = await linesOf(bench, plan, file || undefined, empty);
    const isSixty = plan.what.startsWith("60");
    const paste = isSixty ? [ms("60 × 12 cells pasted", await bench.paste(), 500)] : [];
    return [ms(`${plan.what}, an edit on an empty sheet beside it`, empty.all), ...lines, ...paste];
  } finally {
    await bench.close();
  }
}

const PLANS: readonly Plan[] = [
  { what: "demo", editBudget: 50, settleMs: 0 },
  { what: "template", isNew: true, openBudget: 2, settleMs: 4000 },
  { what: "60 lines", lines: 60, openBudget: 4, editBudget: 100, settleMs: 8000 },
  { what: "200 lines", lines: 200, openBudget: 10, editBudget: 200, settleMs: 20_000 },
];

/** `npm start`: from the command to the page that can be used, with nothing kept from before and once more. */
async function starts(): Promise<BenchLine[]> {
  const time = async () => {
    const began = performance.now();
    const { server } = await startServer();
    const seconds = (performance.now() - began) / 1000;
    server.kill();
    await new Promise((resolve) => server.once("exit", resolve));
    return seconds;
  };
  for (const kept of ["webpack-workbench", "workbench"])
    rmSync(join(CACHE, kept), { recursive: true, force: true });
  return [
    { what: "npm start, cold", value: await time(), unit: "s", budget: 20 },
    { what: "npm start, warm", value: await time(), unit: "s", budget: 5 },
  ];
}

/** The workbench in a real browser, `--plan=60` for one of the plans alone: what an edit takes, what typing waits for, how long a plan takes to open. */
export async function grid(): Promise<BenchLine[]> {
  const asked = process.argv.find((argument) => argument.startsWith("--plan="))?.slice("--plan=".length);
  const started = asked === undefined ? await starts() : [];
  const folder = mkdtempSync(join(tmpdir(), "blade-bench-"));
  const { server, address } = await startServer();
  const browser = await launch();
  try {
    const lines: BenchLine[] = [];
    for (const plan of PLANS)
      if (asked === undefined || plan.what.startsWith(asked))
        lines.push(...(await measured(browser, address, plan, folder)));
    return [...started, ...lines];
  } finally {
    await browser.close();
    server.kill();
    rmSync(folder, { recursive: true, force: true });
  }
}
