import { type ChildProcess, spawn } from "node:child_process";
import type { Browser, Page } from "playwright-core";

const ANNOUNCED = /Building the workbench for (http:\/\/127\.0\.0\.1:\d+\/)/;
const START_LIMIT_MS = 150_000;
/** What the server answers until the page is built. */
const WAITING = "Building the workbench";

/** A server that has begun: it answers with a page that waits until the workbench is built. */
export interface BegunServer {
  readonly server: ChildProcess;
  readonly address: string;
}

/** Begins the workbench as `npm start` does; resolves with the address it prints before it builds. */
export function beginServer(): Promise<BegunServer> {
  const server = spawn(process.execPath, ["src/workbench/serve.cjs"], { stdio: ["ignore", "pipe", "pipe"] });
  return new Promise((resolve, reject) => {
    let said = "";
    const hear = (words: Buffer) => {
      said += words.toString();
      const [, address] = ANNOUNCED.exec(said) ?? [];
      if (address !== undefined) resolve({ server, address });
    };
    server.stdout.on("data", hear);
    server.stderr.on("data", hear);
    server.once("exit", () => {
      if (!server.killed) console.error(`the workbench's server ended: ${said}`);
      reject(new Error(`the server ended: ${said}`));
    });
    const tooLong = new Error(`no address after ${START_LIMIT_MS} ms`);
    setTimeout(() => reject(tooLong), START_LIMIT_MS).unref();
  });
}

/** Waits until the workbench itself stands at an address. @throws where its server has ended or takes too long. */
export async function untilBuilt(address: string): Promise<void> {
  const end = Date.now() + START_LIMIT_MS;
  // A busy machine may cut an answer short: it is asked for again.
  const isWaiting = () =>
    fetch(address).then(
      async (answer) => (await answer.text()).includes(WAITING),
      () => true,
    );
  while (await isWaiting()) {
    if (Date.now() > end) throw new Error(`the workbench was not built within ${START_LIMIT_MS} ms`);
    await new Promise((done) => setTimeout(done, 200));
  }
}

/** Starts the workbench as `npm start` does and waits until it can be used. */
export async function startServer(): Promise<BegunServer> {
  const begun = await beginServer();
  await untilBuilt(begun.address);
  return begun;
}

/** Patience with one step in the browser. */
const STEP_LIMIT_MS = 60_000;
export const SIZE = { width: 1280, height: 800 };

/** A page with what it complained of and what it asked for elsewhere. */
export interface OpenPage {
  readonly page: Page;
  readonly complaints: string[];
  readonly outside: string[];
}

/** Opens the workbench in a context of its own and waits until its fields can be used. */
export async function openPage(browser: Browser, address: string): Promise<OpenPage> {
  const context = await browser.newContext({ viewport: SIZE, acceptDownloads: true });
  const page = await context.newPage();
  page.setDefaultTimeout(STEP_LIMIT_MS);
  const complaints: string[] = [];
  const outside: string[] = [];
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (fault) => complaints.push(String(fault)));
  page.on("request", (request) => {
    if (!request.url().startsWith(address) && !/^(data|blob):/.test(request.url()))
      outside.push(request.url());
  });
  await page.goto(address);
  await page.locator("#cell-content:enabled").waitFor();
  return { page, complaints, outside };
}
