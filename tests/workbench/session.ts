import { type ChildProcess, spawn } from "node:child_process";
import type { Browser, Page } from "playwright-core";
import { launch } from "../browser";

const READY = /Workbench ready: (http:\/\/127\.0\.0\.1:\d+\/)/;
const START_LIMIT_MS = 150_000;
/** Patience with one step in the browser. */
const STEP_LIMIT_MS = 60_000;

/** Starts the workbench as `npm start` does and waits for the address it prints. */
function startServer(): Promise<{ server: ChildProcess; address: string }> {
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
    setTimeout(
      () => reject(new Error(`no address after ${START_LIMIT_MS} ms: ${said}`)),
      START_LIMIT_MS,
    ).unref();
  });
}

/** A page with what it complained of and what it asked for elsewhere. */
export interface OpenPage {
  readonly page: Page;
  readonly complaints: string[];
  readonly outside: string[];
}

/** One server and one browser for all tests of the workbench. */
export class Session {
  private constructor(
    readonly address: string,
    private readonly server: ChildProcess,
    private readonly browser: Browser,
  ) {}

  static async start(): Promise<Session> {
    const [{ server, address }, browser] = await Promise.all([startServer(), launch()]);
    return new Session(address, server, browser);
  }

  /** Opens the workbench in a context of its own and waits until the run is worked out. */
  async open(width = 1280, height = 800): Promise<OpenPage> {
    const context = await this.browser.newContext({ viewport: { width, height }, acceptDownloads: true });
    const page = await context.newPage();
    page.setDefaultTimeout(STEP_LIMIT_MS);
    const complaints: string[] = [];
    const outside: string[] = [];
    page.on("console", (message) => {
      if (["error", "warning"].includes(message.type())) complaints.push(message.text());
    });
    page.on("pageerror", (fault) => complaints.push(String(fault)));
    page.on("request", (request) => {
      if (!request.url().startsWith(this.address) && !/^(data|blob):/.test(request.url()))
        outside.push(request.url());
    });
    await page.goto(this.address);
    await page.locator("#cell-content:enabled").waitFor();
    return { page, complaints, outside };
  }

  async end(): Promise<void> {
    await this.browser.close();
    this.server.kill();
  }
}
