import { expect, test } from "vitest";
import { workbenchPages } from "./session";

const workbench = workbenchPages("for each test");

/** How often timers of the page have run; before any script of the page, its timers are made to count. */
function countTimers(): void {
  const counted = window as unknown as { timersRun: number };
  counted.timersRun = 0;
  for (const name of ["setTimeout", "setInterval"] as const) {
    const published = window[name] as (...given: unknown[]) => number;
    const counting = (run: unknown, ...rest: unknown[]) => {
      if (typeof run !== "function") return published(run, ...rest);
      const counts = (...given: unknown[]) => {
        counted.timersRun += 1;
        run(...given);
      };
      return published(counts, ...rest);
    };
    Object.assign(window, { [name]: counting });
  }
}

const SECONDS = 3;
/**
 * Measured: 2 a second; 79 where nothing rests, on a machine so busy that each timer of 16 ms came to a quarter of its
 * turns. One that does not rest passes this limit alone.
 */
const MOST_A_SECOND = 8;

test("while nothing is done, the grid's timers rest", async () => {
  const { page, bench } = workbench();
  await page.context().addInitScript(countTimers);
  await page.reload();
  await page.locator("#cell-content:enabled").waitFor();
  await bench.settled();
  await page.waitForTimeout(2000);
  const run = () => page.evaluate(() => (window as unknown as { timersRun: number }).timersRun);
  const before = await run();
  // They count at all: the page has set some while it opened.
  expect(before).toBeGreaterThan(0);
  await page.waitForTimeout(1000 * SECONDS);
  expect(((await run()) - before) / SECONDS).toBeLessThan(MOST_A_SECOND);
});
