import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject } from "vitest";
import { launch } from "../browser";
import { Bench } from "./bench";
import { type OpenPage, openPage, SIZE, untilBuilt } from "./server";

/** A page of the workbench and what works it. */
export interface Workbench extends OpenPage {
  readonly bench: Bench;
}

/**
 * The workbench for the tests of one file: a page for each test, or one page for all of them.
 *
 * Opening a page takes longer than most tests do. Tests that share one leave the run as they found
 * it (undo), and after a test that failed the next one gets a page of its own.
 */
export function workbenchPages(given: "for each test" | "for all tests"): () => Workbench {
  let browser: Browser;
  let opened: Workbench | undefined;
  beforeAll(async () => {
    await untilBuilt(inject("workbench"));
    browser = await launch();
  });
  afterAll(() => browser?.close());
  beforeEach(async () => {
    if (opened === undefined) {
      const page = await openPage(browser, inject("workbench"));
      opened = { ...page, bench: new Bench(page.page) };
    } else {
      await opened.page.setViewportSize(SIZE);
      await opened.bench.sheet("Lines");
      await opened.bench.goTo("A1");
    }
  });
  afterEach(async ({ task }) => {
    const { complaints = [], outside = [] } = opened ?? {};
    if (given === "for each test" || task.result?.state === "fail") {
      await opened?.page.context().close();
      opened = undefined;
    }
    expect(complaints).toEqual([]);
    expect(outside).toEqual([]);
  });
  return () => opened as Workbench;
}
