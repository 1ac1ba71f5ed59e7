import { resolve } from "node:path";
import { Worker } from "node:worker_threads";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { cellName, readCellParts } from "../../src/formula/addresses";
import { lineCell } from "../../src/workbook/sheets/lines-sheet";
import { Hands } from "./hands";
import { workbenchPages } from "./session";

const LONG = 1_200_000;
/** `TYPED_ENTRIES=200` for the long form; a run of the tests makes do with fewer. */
const ENTRIES = Number(process.env.TYPED_ENTRIES ?? 10);
/** `TYPED_FILE` names another plan to type into, one of 60 lines, say. */
const FILE = process.env.TYPED_FILE;
const MAX_PAUSE_MS = 400;

const columnOfKey = (key: "item" | "steel") => readCellParts(lineCell(1, key))?.column ?? Number.NaN;
/** Where the sheet of lines is typed into, rows and columns counted from 0. */
const LINES = { row: 5, rows: 4, item: columnOfKey("item"), steel: columnOfKey("steel") };

const NAMES = ["Hollow Hill", "Tern chef 210", "Alder", "Long word here"];
const STEELS = ["5160", "1095", "80CrV2", "O1", "52100"];

/** Keeps one core of the machine busy beside the browser. */
const burner = () => new Worker("const until = () => true; while (until()) Math.sqrt(2);", { eval: true });

const workbench = workbenchPages("for each test");

/** Does something while one core has other work. */
async function besideABusyCore<T>(work: () => Promise<T>): Promise<T> {
  const load = burner();
  try {
    return await work();
  } finally {
    await load.terminate();
  }
}

/** Numbers from 0 to 1, the same at each run (a multiplicative congruential generator, Park and Miller 1988). */
function repeatable(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}

/** Types entries in turn into cells of items and of steels; gives what each cell ought to hold. */
async function typeEntries(page: Page, { row, rows, item, steel } = LINES): Promise<Map<string, string>> {
  const random = repeatable(11);
  const one = <T>(of: readonly T[]) => of[Math.floor(random() * of.length)] as T;
  const hands = new Hands(page);
  await hands.settle();
  const wanted = new Map<string, string>();
  for (let entry = 0; entry < ENTRIES; entry += 1) {
    const column = one([item, steel]);
    const line = row + Math.floor(random() * rows);
    await hands.go(line, column);
    const text = one(column === steel ? STEELS : NAMES);
    await hands.type(text, one(["Enter", "Tab"]));
    wanted.set(cellName(line, column), text);
    await page.waitForTimeout(random() * MAX_PAUSE_MS);
  }
  return wanted;
}

/** What cells hold, read through the field above the grid. */
async function held(page: Page, addresses: Iterable<string>): Promise<Map<string, string>> {
  const found = new Map<string, string>();
  await page.waitForTimeout(1500);
  for (const address of addresses) {
    await page.fill("#cell-address", address);
    await page.press("#cell-address", "Enter");
    await expect.poll(() => page.inputValue("#cell-address"), { timeout: 30_000 }).toBe(address);
    await page.waitForTimeout(150);
    found.set(address, await page.inputValue("#cell-content"));
  }
  return found;
}

test("in the demo no letter is lost and every entry stands in its cell", { timeout: LONG }, async () => {
  const { page } = workbench();
  const wanted = await besideABusyCore(() => typeEntries(page));
  expect(await held(page, wanted.keys())).toEqual(wanted);
});

test("in the planning template no letter is lost and every entry stands in its cell", {
  timeout: LONG,
}, async () => {
  const { page, bench } = workbench();
  if (FILE === undefined) await page.click("#new-run");
  else await page.setInputFiles("#file", resolve(FILE));
  await page.locator("#notice-words", { hasText: /new run|Opened/ }).waitFor({ timeout: 120_000 });
  await bench.sheet("Lines");
  const wanted = await besideABusyCore(() => typeEntries(page));
  expect(await held(page, wanted.keys())).toEqual(wanted);
});
