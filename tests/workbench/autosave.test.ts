import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { beforeEach, describe, expect, inject, test } from "vitest";
import { writeWorkbook } from "../../src/workbook/file/write/write-workbook";
import { demoWorkbook } from "../../src/workbook/sheets/demo/demo-workbook";
import { lineCell } from "../../src/workbook/sheets/lines-sheet";
import { shownWorkbook } from "../../src/workbook/sheets/parts/workbook-of-model";
import { Bench } from "./bench";
import { type Workbench, workbenchPages } from "./session";

const workbench = workbenchPages("for each test");
let opened: Workbench;
let bench: Bench;

beforeEach(async () => {
  opened = workbench();
  ({ bench } = opened);
  await bench.settled();
});

const ready = (page: Page) => page.locator("#cell-content:enabled").waitFor();
const notice = () => opened.page.textContent("#notice-words");

async function reload(): Promise<void> {
  await opened.page.reload();
  await ready(opened.page);
}

/** In what form the browser holds the workbook that was kept last. */
const keptGrid = () =>
  opened.page.evaluate(
    () =>
      new Promise<string>((done, failed) => {
        const request = indexedDB.open("blade-metallurgy-workbench");
        request.onerror = () => failed(request.error);
        request.onsuccess = () => {
          const read = request.result.transaction("runs").objectStore("runs").get("present");
          read.onsuccess = () => {
            request.result.close();
            done(read.result.grid === undefined ? "none" : "whole");
          };
        };
      }),
  );

describe("work kept by the browser", () => {
  test("nothing is restored where nothing was changed", async () => {
    await reload();
    expect(await opened.page.locator("#notice").isHidden()).toBe(true);
  });

  test("a reload right after a change loses nothing, and starting afresh can be taken back", async () => {
    await bench.enter(lineCell(0, "good"), "31");
    await reload();
    await expect.poll(notice).toMatch(/^Restored what you had at \d\d:\d\d: Run R-07\.xlsx\./);
    await bench.says(lineCell(0, "good"), "31");
    await bench.press("Start afresh");
    await bench.says(lineCell(0, "good"), "24");
    await bench.press("Bring back");
    await bench.says(lineCell(0, "good"), "31");
  });

  test("a reload in the middle of typing loses nothing, in the field and in the picture", async () => {
    const { page } = opened;
    await bench.goTo(lineCell(1, "item"));
    await page.fill("#cell-content", "Field knife, half ty");
    await reload();
    await expect.poll(() => page.inputValue("#cell-content")).toBe("Field knife, half ty");
    await page.keyboard.type("ped");
    await page.keyboard.press("Enter");
    await bench.says(lineCell(1, "item"), "Field knife, half typed");
    await bench.press("Close");
    const below = await bench.clickBelowTheRun();
    await page.keyboard.type("=BLADE.CARBON(", { delay: 10 });
    await reload();
    await expect.poll(() => page.inputValue("#cell-content")).toBe("=BLADE.CARBON(");
    await expect.poll(() => page.inputValue("#cell-address")).toBe(below);
    await page.keyboard.press("Escape");
    await bench.says(lineCell(1, "item"), "Field knife, half typed");
  });

  test("a page that ended without a word is restored by the next one", async () => {
    await bench.enter(lineCell(0, "good"), "33");
    await bench.says(lineCell(0, "good"), "33");
    // Longer than any change waits to be kept.
    await opened.page.waitForTimeout(2500);
    const context = opened.page.context();
    const next = await context.newPage();
    await opened.page.close({ runBeforeUnload: false });
    await next.goto(inject("workbench"));
    await ready(next);
    await new Bench(next).says(lineCell(0, "good"), "33");
    await next.close();
  });

  test("what is edited after the whole was kept is kept beside it, cells that were emptied among it", async () => {
    await bench.enter(lineCell(0, "good"), "31");
    // Longer than any change waits to be kept.
    await opened.page.waitForTimeout(2500);
    await bench.enter(lineCell(1, "good"), "32");
    await bench.enter(lineCell(1, "item"), "Field knife, long");
    await bench.enter(lineCell(2, "item"), "");
    await opened.page.waitForTimeout(2500);
    await bench.enter(lineCell(0, "good"), "34");
    await reload();
    await bench.says(lineCell(0, "good"), "34");
    await bench.says(lineCell(1, "good"), "32");
    await bench.says(lineCell(1, "item"), "Field knife, long");
    await bench.says(lineCell(2, "item"), "Empty");
    await expect.poll(notice).toMatch(/^Restored what you had/);
  });

  test("a file that was opened is kept as it is, and what is edited in it beside it", async () => {
    const folder = mkdtempSync(join(tmpdir(), "blade-kept-"));
    try {
      const file = join(folder, "Tern Hollow.xlsx");
      writeFileSync(file, await writeWorkbook(shownWorkbook(demoWorkbook())));
      await opened.page.setInputFiles("#file", file);
      await expect.poll(notice).toMatch(/^Opened Tern Hollow\.xlsx/);
      // Longer than any change waits to be kept.
      await opened.page.waitForTimeout(2500);
      expect(await keptGrid()).toBe("none");
      await reload();
      await expect.poll(notice).toMatch(/^Restored what you had at \d\d:\d\d: Tern Hollow\.xlsx\./);
      await bench.says(lineCell(0, "good"), "24");
      await opened.page.setInputFiles("#file", file);
      await expect.poll(notice).toMatch(/^Opened Tern Hollow\.xlsx/);
      await opened.page.waitForTimeout(2500);
      await bench.enter(lineCell(0, "good"), "31");
      await bench.enter(lineCell(2, "item"), "");
      await reload();
      await expect.poll(notice).toMatch(/^Restored what you had/);
      await bench.says(lineCell(0, "good"), "31");
      await bench.says(lineCell(2, "item"), "Empty");
      await bench.says(lineCell(1, "good"), /^\d+$/);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  test("kept work that is spoiled is said, set aside, and the page stays usable", async () => {
    await bench.enter(lineCell(0, "good"), "36");
    await opened.page.waitForTimeout(2500);
    // The record as another program, or a disk, might leave it: the workbook is gone, what stands around it is there.
    await opened.page.evaluate(
      () =>
        new Promise<void>((done, failed) => {
          const request = indexedDB.open("blade-metallurgy-workbench");
          request.onerror = () => failed(request.error);
          request.onsuccess = () => {
            const store = request.result.transaction("runs", "readwrite").objectStore("runs");
            const read = store.get("present");
            read.onsuccess = () => {
              store.put({ ...read.result, grid: { snapshot: null, isRearranged: false } }, "present");
              store.transaction.oncomplete = () => {
                request.result.close();
                done();
              };
            };
          };
        }),
    );
    await reload();
    await expect.poll(notice).toMatch(/^What the browser kept cannot be read, so the demo run stands here/);
    await bench.says(lineCell(0, "good"), "24");
    await bench.enter(lineCell(0, "good"), "37");
    await bench.says(lineCell(0, "good"), "37");
    expect(await opened.page.getByRole("button", { name: "Bring back" }).isVisible()).toBe(true);
  });

  test("a second window says that it does not keep, and leaves what the first one keeps alone", async () => {
    await bench.enter(lineCell(0, "good"), "35");
    const second = await opened.page.context().newPage();
    await second.goto(inject("workbench"));
    await ready(second);
    await expect.poll(() => second.textContent("#notice-words")).toMatch(/open in another window/);
    await new Bench(second).enter(lineCell(0, "good"), "99");
    await second.close();
    await reload();
    await bench.says(lineCell(0, "good"), "35");
  });
});
