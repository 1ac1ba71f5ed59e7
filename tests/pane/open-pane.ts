import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import type { ServedFolder } from "./static-server";

/** A page of the pane with what went wrong on it so far. */
export interface OpenPane {
  readonly page: Page;
  /** Uncaught errors and messages of the console that are not known to be harmless. */
  readonly problems: string[];
  /** Requests to other addresses than the pages' own. */
  readonly outside: string[];
}

/**
 * office.js outside Excel says so, and reports to its maker in a frame, which the pane's content
 * security policy keeps out.
 */
const HARMLESS = [
  /Office\.js is loaded outside of Office client/,
  /inline style violates/,
  /Framing 'https:/,
];

export interface PaneAt {
  readonly served: ServedFolder;
  readonly hash?: string;
  readonly options?: BrowserContextOptions;
  /** Sets the page up before it loads. */
  readonly before?: (page: Page) => Promise<void>;
}

/** Opens the built page in a context of its own and waits for its first heading. */
export async function openPane(
  browser: Browser,
  { served, hash = "", options, before }: PaneAt,
): Promise<OpenPane> {
  const context = await browser.newContext({ viewport: { width: 320, height: 720 }, ...options });
  const page = await context.newPage();
  const problems: string[] = [];
  const outside: string[] = [];
  page.on("pageerror", (problem) => problems.push(problem.message));
  page.on("console", (message) => {
    const text = message.text();
    if (message.type() === "error" && !HARMLESS.some((known) => known.test(text))) problems.push(text);
  });
  await page.route(/.*/, (route) => {
    const address = route.request().url();
    if (address.startsWith(`${served.address}/`)) return route.continue();
    outside.push(address);
    return route.abort();
  });
  await before?.(page);
  await page.goto(`${served.address}/taskpane.html${hash}`);
  await page.waitForSelector("h2");
  return { page, problems, outside };
}

/** Chooses a page of the pane by its name and waits until it is there. */
export async function choose(page: Page, name: string): Promise<void> {
  await page.getByRole("button", { name, exact: true }).click();
  await page.waitForSelector(`h2:text-is("${name}")`);
}
