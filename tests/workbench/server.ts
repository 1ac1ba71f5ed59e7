import { type ChildProcess, spawn } from "node:child_process";
import type { Browser, Page } from "playwright-core";

const READY = /Workbench ready: (http:\/\/127\.0\.0\.1:\d+\/)/;
const START_LIMIT_MS = 150_000;

/** Starts the workbench as `npm start` does and waits for the address it prints. */
export function startServer(): Promise<{ server: ChildProcess; address: string }> {
  const server = spawn(process.execPath, ["src/workbench/serve.cjs"], { stdio: ["ignore", "pipe", "pipe"] });
  return new Promise((resolve, reject) => {
    let said = "";
    const hear = (words: Buffer) => {
      said += words.toString();
      const [, address] = READY.exec(said) ?? [];
      if (address !== undefined) resolve({ server, address });
    };
    server.stdout.on("data", hear);
    server.stderr.on("data", hear);
    server.once("exit", () => reject(new Error(`the server ended: ${said}`)));
    const tooLong = new Error(`no address after ${START_LIMIT_MS} ms`);
    setTimeout(() => reject(tooLong), START_LIMIT_MS).unref();
  });
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
