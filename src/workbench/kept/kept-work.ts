import { withCells } from "../grid/edited-cells";
import type { Draft } from "../grid/grid-workbook";
import { claim, type KeptChanges, type KeptRun, KeptStore } from "./kept-store";

const OTHER_WINDOW =
  "The workbench is open in another window, which keeps its work by itself. Work done here is not kept: save it to a file.";
const NOTHING_KEPT =
  "This browser keeps nothing for the workbench (a private window, perhaps): save your work to a file before you leave.";
const WENT_WRONG =
  "Opening what was kept did not come to an end last time, so the demo run stands here. “Bring back” tries again.";

const SPOILED =
  "What the browser kept cannot be read, so the demo run stands here. It is set aside: “Bring back” tries it again.";

/** Work as it was kept last; changes of another whole are none of it. */
function withChanges(whole: KeptRun, changes: KeptChanges | undefined): KeptRun {
  if (changes?.of !== whole.savedAt) return whole;
  const { of: _, cells, ...rest } = changes;
  if (whole.grid === undefined) return { ...whole, ...rest, cells };
  const grid = { ...whole.grid, snapshot: withCells(whole.grid.snapshot, cells) };
  return { ...whole, ...rest, grid };
}

/** Kept work with its changes; `null` where one of the two is spoiled. */
function readable(whole: KeptRun, changes: KeptChanges | undefined): KeptRun | null {
  try {
    return withChanges(whole, changes);
  } catch {
    return null;
  }
}

/** What the browser kept from the last visit, and where the present one may be kept. */
export class KeptWork {
  private constructor(
    /** `undefined` where nothing can be kept now; `reason` says why. */
    readonly store: KeptStore | undefined,
    readonly reason: string,
    readonly present: KeptRun | undefined,
    readonly draft: Draft | undefined,
    /** Why kept work is not shown; empty where there is none or it is. */
    readonly failure: string,
  ) {}

  static async read(): Promise<KeptWork> {
    const [store, isOurs] = await Promise.all([KeptStore.open(), claim()]);
    if (!isOurs) return new KeptWork(undefined, OTHER_WINDOW, undefined, undefined, "");
    if (store === undefined) return new KeptWork(undefined, NOTHING_KEPT, undefined, undefined, "");
    const [whole, changes, draft, wasOpening] = await Promise.all([
      store.read("present"),
      store.read("changes"),
      store.read("draft"),
      store.read("opening"),
    ]);
    const present = whole && readable(whole, changes);
    if (present === null) return KeptWork.spoiled(store, whole);
    if (present === undefined) return new KeptWork(store, "", undefined, draft, "");
    if (wasOpening) {
      await store.write("earlier", present);
      await store.write("present", undefined);
      await store.write("opening", undefined);
      return new KeptWork(store, "", undefined, undefined, WENT_WRONG);
    }
    await store.write("opening", true);
    return new KeptWork(store, "", present, draft, "");
  }

  /** Sets kept work aside that cannot be read, before anything is kept in its place. */
  private static async spoiled(store: KeptStore, whole: KeptRun | undefined): Promise<KeptWork> {
    await store.write("earlier", whole);
    await store.write("present", undefined);
    return new KeptWork(store, "", undefined, undefined, SPOILED);
  }

  /**
   * Sets kept work aside that the grid could not show.
   *
   * @returns What to tell about it.
   */
  async setAside(): Promise<string> {
    if (this.store !== undefined) await KeptWork.spoiled(this.store, this.present);
    return SPOILED;
  }

  /** Tells that what was kept stands on the page. */
  async opened(): Promise<void> {
    await this.store?.write("opening", undefined);
  }

  async earlier(): Promise<KeptRun | undefined> {
    return this.store?.read("earlier");
  }

  /** Time of day at which the present work was kept. */
  get time(): string {
    return new Date(this.present?.savedAt ?? 0).toLocaleTimeString("en-GB", {
      hour: "2-digit",
      minute: "2-digit",
    });
  }
}
