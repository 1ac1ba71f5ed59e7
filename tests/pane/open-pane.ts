import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import type { ServedFolder } from "./static-server";

/** A page of the pane with what went wrong on it so far. */
export interface OpenPane {
  readonly page: Page;
  /** Uncaught errors and messages of the console that are not known to be harmless. */
  readonly problems: string[];
  /** Requests to other addresses than the pages' own. */
  readonly outside: string[];
  /** What the content security policy kept out, with the file that tried, office.js left aside. */
  readonly kept: () => Promise<string[]>;
}

/** Collects what the policy keeps out, from before the first script. */
const KEPT_OUT = `
  window.keptOut = [];
  addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI, sourceFile }) =>
    window.keptOut.push(effectiveDirective + " " + blockedURI + " by " + sourceFile));`;

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
  await page.addInitScript(KEPT_OUT);
  await before?.(page);
  await page.goto(`${served.address}/taskpane.html${hash}`);
  await page.waitForSelector("h2");
  const kept = async () => {
    const all = await page.evaluate<string[]>("window.keptOut");
    return all.filter((text) => !/ by http:[^ ]*\/office\//.test(text));
  };
  return { page, problems, outside, kept };
}

/** Chooses a page of the pane by its name and waits until it is there. */
export async function choose(page: Page, name: string): Promise<void> {
  await page.getByRole("button", { name, exact: true }).click();
  await page.waitForSelector(`h2:text-is("${name}")`);
}

/** How far the page runs past the right edge, in pixels. */
export async function overflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Opens what is closed, but for the long list of functions, of which two stand for all. */
export async function openDisclosures(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const [at, details] of [...document.querySelectorAll("details")].entries()) {
      details.open = at < 2 || !details.classList.contains("function");
    }
  });
  await drawn(page);
}

/** Waits until what was begun is drawn: events that wait, such as that of a disclosure, come before the second frame. */
export async function drawn(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(undefined)))),
  );
}

/** Longer than a form waits for the next key before it answers. */
const QUIET_MS = 250;

/** Waits until a form that was filled in has answered: nothing of the page changes any more. */
export async function answered(page: Page): Promise<void> {
  await page.evaluate(
    (quiet) =>
      new Promise<void>((done) => {
        let timer = setTimeout(end, quiet);
        const observer = new MutationObserver(() => {
          clearTimeout(timer);
          timer = setTimeout(end, quiet);
        });
        function end(): void {
          observer.disconnect();
          done();
        }
        observer.observe(document.body, {
          childList: true,
          subtree: true,
          characterData: true,
          attributes: true,
        });
      }),
    QUIET_MS,
  );
}
