import { sentenceOf } from "../../core/refusal";
import type { Draft } from "../grid/grid-workbook";
import type { Kept, KeptChanges, KeptRun, KeptStore } from "./kept-store";

/** Pause after a change before it is kept; changes that follow each other quickly are kept together. */
const PAUSE_MS = 300;
/** No change waits longer than this. */
const LONGEST_MS = 1500;

/** The work that is kept: as a whole, or what changed since it was kept so. */
export interface KeptByParts {
  keptWhole(): KeptRun;
  keptChanges(): Omit<KeptChanges, "of"> | undefined;
}

/**
 * Keeps the workbook in the browser while it is worked on.
 *
 * @param work - The workbook as it stands.
 * @param failed - Told once, where the browser refuses to keep it.
 */
export class Autosave {
  private timer: ReturnType<typeof setTimeout> | undefined;
  private waitingSince = 0;
  private hasFailed = false;
  /** When the whole was kept that changes are kept beside. */
  private wholeOf: number | undefined;

  constructor(
    private readonly store: KeptStore,
    private readonly work: KeptByParts,
    private readonly failed: (reason: string) => void,
  ) {
    // A page that goes may only be hidden first, and never be told more.
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden") this.flush();
    });
    window.addEventListener("pagehide", () => this.flush());
  }

  /** Tells that something changed. */
  changed(): void {
    const now = Date.now();
    if (this.timer === undefined) this.waitingSince = now;
    clearTimeout(this.timer);
    const rest = Math.max(0, this.waitingSince + LONGEST_MS - now);
    this.timer = setTimeout(() => this.flush(), Math.min(PAUSE_MS, rest));
  }

  /** Keeps what somebody is typing with every letter; `null` once it is entered or dropped. */
  typing(draft: Draft | null): void {
    this.write("draft", draft ?? undefined);
  }

  /** Keeps another workbook so that it can be brought back. */
  setAside(run: KeptRun): void {
    this.write("earlier", run);
  }

  /** Keeps at once what waits to be kept. */
  flush(): void {
    if (this.timer === undefined) return;
    clearTimeout(this.timer);
    this.timer = undefined;
    const changes = this.wholeOf === undefined ? undefined : this.work.keptChanges();
    if (changes === undefined || this.wholeOf === undefined) this.writeWhole();
    else this.write("changes", { ...changes, of: this.wholeOf });
  }

  private writeWhole(): void {
    const whole = this.work.keptWhole();
    this.wholeOf = whole.savedAt;
    this.write("present", whole);
  }

  private write<K extends keyof Kept>(key: K, content: Kept[K] | undefined): void {
    // Runs up to the write itself before it returns, and turns whatever goes wrong into one answer.
    const attempt = async () => this.store.write(key, content);
    attempt().catch((fault: unknown) => {
      this.wholeOf = undefined;
      if (this.hasFailed) return;
      this.hasFailed = true;
      this.failed(sentenceOf(fault));
    });
  }
}
