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

  /** Processor time so far, ms: of the thread that answers keys, and of all threads of all pages. */
  private async taken(): Promise<{ readonly main: number; readonly all: number; readonly at: number }> {
    const { metrics } = await this.own.send("Performance.getMetrics");
    const main = metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN;
    const { processInfo } = (await this.all.send("SystemInfo.getProcessInfo")) as {
      processInfo: ProcessInfo[];
    };
    const pages = processInfo.filter(({ type }) => type === "renderer");
    return {
      main: main * 1000,
      all: 1000 * pages.reduce((sum, { cpuTime }) => sum + cpuTime, 0),
      at: Date.now(),
    };
  }

  /** Processor time of an action and what follows from it within a time, less what the page takes anyway, ms. */
  async during(
    action: () => Promise<void>,
    settleMs: number,
  ): Promise<{ readonly main: number; readonly all: number }> {
    const before = await this.taken();
    await this.page.waitForTimeout(1500);
    const start = await this.taken();
    await action();
    await this.page.waitForTimeout(settleMs);
    const end = await this.taken();
    const share = (end.at - start.at) / (start.at - before.at);
    const beyond = (key: "main" | "all") => end[key] - start[key] - share * (start[key] - before[key]);
    return { main: beyond("main"), all: beyond("all") };
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
