import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Browser, Page } from "playwright-core";
import { launch } from "../browser";
import { serveFolder } from "../pane/static-server";
import type { BenchLine } from "./line";
import { median } from "./measure";

/** Pages as in production, with office.js from npm so that nothing is asked of the network. */
const FOLDER = "node_modules/.cache/blade-metallurgy/bench-pages";
const EMPTY = "empty.html";
const PASSES = 9;

function build(): void {
  const options = ["--mode", "production", "--env", "office=npm", "--env", "quiet", "--env", `out=${FOLDER}`];
  const { status, stderr } = spawnSync("npx", ["webpack", ...options], { encoding: "utf8" });
  if (status !== 0) throw new Error(`the pages did not build: ${stderr}`);
  writeFileSync(
    join(FOLDER, EMPTY),
    '<!doctype html><html lang="en"><title>empty</title><main></main></html>',
  );
}

function kilobytes(files: readonly string[]): number {
  const sizes = files.map((file) => gzipSync(readFileSync(join(FOLDER, file)), { level: 9 }).length);
  return sizes.reduce((sum, size) => sum + size, 0) / 1000;
}

/** Fetched when it is first asked for, with a budget of its own in webpack.config.js. */
const ON_DEMAND = /^page-(workbook-files|functions-list|about|argument-form)\./;

/** Without budgets: those stand in webpack.config.js, and a build over one of them fails. */
function sizes(): BenchLine[] {
  const files = readdirSync(FOLDER).filter((name) => /\.(js|css)$/.test(name));
  const pages = files.filter((name) => /^(page-|taskpane)/.test(name));
  const first = files.filter((name) => /^(functions|taskpane)\./.test(name));
  const largest = pages.map((name) => [kilobytes([name]), name] as const).sort(([a], [b]) => b - a);
  const named = (name: string) => name.replace(/\.[0-9a-f]{8}(?=\.)/, "");
  const size = (what: string, value: number): BenchLine => ({ what, value, unit: "kB gzip" });
  return [
    size("functions.js", kilobytes(["functions.js"])),
    size("task pane beyond it", kilobytes(pages.filter((name) => !ON_DEMAND.test(name)))),
    size("before the first page shows", kilobytes(first)),
    ...largest.map(([kB, name]) => size(`  ${named(name)}`, kB)),
  ];
}

/** Notes in the page itself when functions are first registered and when the first page can be used. */
const WATCH = `
  window.marks = {};
  const mark = (name) => { window.marks[name] ??= performance.now(); };
  new MutationObserver(() => {
    const { mappings = {} } = globalThis.CustomFunctions?._association ?? {};
    if (Object.keys(mappings).length > 0) mark("registered");
    if (document.querySelector(".page input, .page select, .page button") !== null) mark("usable");
  }).observe(document, { childList: true, subtree: true });
  addEventListener("load", () => mark("loaded"));`;

/** Milliseconds from the navigation to a mark, in a browser that has fetched nothing before. */
async function timeTo(browser: Browser, address: string, mark: string): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 320, height: 720 } });
  try {
    const page: Page = await context.newPage();
    await page.addInitScript(WATCH);
    await page.goto(address);
    const found = await page.waitForFunction(`window.marks.${mark}`);
    return Number(await found.jsonValue());
  } finally {
    await context.close();
  }
}

const MARKS = { registered: "first function registered", usable: "pane usable" } as const;

/** The pane and an empty page by turns, so that whatever else the machine does falls on both. */
async function starts(): Promise<BenchLine[]> {
  const served = await serveFolder(join(process.cwd(), FOLDER));
  const browser = await launch();
  const times = { empty: [] as number[], registered: [] as number[], usable: [] as number[] };
  try {
    for (let pass = 0; pass < PASSES; pass += 1) {
      times.empty.push(await timeTo(browser, `${served.address}/${EMPTY}`, "loaded"));
      times.registered.push(await timeTo(browser, `${served.address}/taskpane.html`, "registered"));
      times.usable.push(await timeTo(browser, `${served.address}/taskpane.html`, "usable"));
    }
  } finally {
    await browser.close();
    served.close();
  }
  const empty = median(times.empty);
  return (["registered", "usable"] as const).map((mark): BenchLine => {
    return {
      what: `navigation to ${MARKS[mark]}, against an empty page`,
      value: median(times[mark]) / empty,
      unit: "×",
    };
  });
}

/** Sizes of the pages' files and how soon they are ready. */
export async function pages(): Promise<BenchLine[]> {
  build();
  return [...sizes(), ...(await starts())];
}
