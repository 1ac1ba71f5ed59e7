import type { Browser, CDPSession, Page } from "playwright-core";

interface ProcessInfo {
  readonly type: string;
  readonly cpuTime: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Processor time, ms: of the thread that answers keys, and of all threads of all pages. */
export interface Taken {
  readonly main: number;
  readonly all: number;
}

/** What a page takes of the processor, whatever else the machine does. */
export class PageLoad {
  private constructor(
    private readonly page: Page,
    private readonly own: CDPSession,
    private readonly all: CDPSession,
  ) {}

  static async of(browser: Browser, page: Page): Promise<PageLoad> {
    const [own, all] = [await page.context().newCDPSession(page), await browser.newBrowserCDPSession()];
    await own.send("Performance.enable", { timeDomain: "threadTicks" });
    return new PageLoad(page, own, all);
  }

  /** Processor time so far. */
  private async taken(): Promise<Taken> {
    const { metrics } = await this.own.send("Performance.getMetrics");
    const main = metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN;
    const { processInfo } = (await this.all.send("SystemInfo.getProcessInfo")) as {
      processInfo: ProcessInfo[];
    };
    const pages = processInfo.filter(({ type }) => type === "renderer");
    return { main: main * 1000, all: 1000 * pages.reduce((sum, { cpuTime }) => sum + cpuTime, 0) };
  }

  /**
   * Processor time of an action and of whatever the page does within a time after it, ms. Nothing is taken off for
   * what a page does anyway: `atRest` tells that beside it.
   */
  async during(action: () => Promise<void>, settleMs: number): Promise<Taken> {
    const start = await this.taken();
    await action();
    await this.page.waitForTimeout(settleMs);
    const end = await this.taken();
    return { main: end.main - start.main, all: end.all - start.all };
  }

  /** Processor time that the page takes while nobody touches it, ms a second. */
  async atRest(seconds = 4): Promise<Taken> {
    const { main, all } = await this.during(async () => undefined, 1000 * seconds);
    return { main: main / seconds, all: all / seconds };
  }

  /** The longest piece of work of the thread that answers keys, in processor time, ms. */
  async longestTask(action: () => Promise<void>): Promise<number> {
    const events: TraceEvent[] = [];
    this.all.on("Tracing.dataCollected", ({ value }) => events.push(...(value as unknown as TraceEvent[])));
    await this.all.send("Tracing.start", { categories: "toplevel,__metadata", transferMode: "ReportEvents" });
    await action();
    const complete = new Promise((resolve) => this.all.once("Tracing.tracingComplete", resolve));
    await this.all.send("Tracing.end");
    await complete;
    const mains = new Set(
      events.flatMap(({ name, args, pid, tid }) =>
        name === "thread_name" && args?.name === "CrRendererMain" ? [`${pid} ${tid}`] : [],
      ),
    );
    const tasks = events.filter(({ ph, pid, tid }) => ph === "X" && mains.has(`${pid} ${tid}`));
    return Math.max(...tasks.map(({ tdur = 0 }) => tdur / 1000));
  }
}
