import { mkdtempSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launch } from "../browser";
import { serveFolder } from "../pane/static-server";
import { Bench } from "../workbench/bench";

const { buildStatic } = createRequire(import.meta.url)("../../src/workbench/static/build.cjs") as {
  buildStatic: (output: string) => Promise<string>;
};

const host = mkdtempSync(join(tmpdir(), "static-workbench-"));

beforeAll(() => buildStatic(join(host, "shop/workbench")), 300_000);

afterAll(() => rmSync(host, { recursive: true, force: true }));

test("below any address of a static host the workbench works, and after the first visit without the host", async () => {
  const served = await serveFolder(host);
  const browser = await launch();
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  const problems: string[] = [];
  page.on("pageerror", (problem) => problems.push(problem.message));
  page.on("console", (message) => {
    if (message.type() === "error") problems.push(message.text());
  });
  const bench = new Bench(page);
  await page.goto(`${served.address}/shop/workbench/index.html`);
  await bench.settled();
  await page.evaluate(() => navigator.serviceWorker.ready);
  served.close();
  await page.reload();
  await bench.settled();
  await bench.newSheet();
  await bench.enter("A1", '=ROUND(BLADE.MASS(100,50,4,"rectangle"),3)');
  // By hand: 100 × 50 × 4 mm³ at 7.85 g/cm³ (EN 1993-1-1, 3.2.6).
  await bench.says("A1", "157");
  expect(problems).toEqual([]);
  await browser.close();
}, 300_000);
