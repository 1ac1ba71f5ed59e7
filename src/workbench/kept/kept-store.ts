import type { EditedCell } from "../grid/edited-cells";
import type { Draft, GridState } from "../grid/grid-workbook";

/** A workbook with what belongs to it, as the browser keeps it between visits. */
export interface KeptRun {
  /** Milliseconds since 1970. */
  readonly savedAt: number;
  /** Name of the file it is saved to. */
  readonly name: string;
  /** The file it was opened from, where there is one. */
  readonly file: Uint8Array | undefined;
  readonly isSaved: boolean;
  /** Nothing where the workbook is what its file opens to: a file is a tenth of what the grid makes of it. */
  readonly grid: GridState | undefined;
  /** Cells that were edited since the file was opened, where that is kept instead of the grid. */
  readonly cells?: readonly EditedCell[];
  readonly sheet: string;
  readonly address: string;
}

/** What changed since a workbook was kept as a whole: a whole takes too long to be written after every edit. */
export interface KeptChanges extends Omit<KeptRun, "file" | "grid" | "cells"> {
  /** When that whole was kept. */
  readonly of: number;
  readonly cells: readonly EditedCell[];
}

/** What the store holds. `opening` stands while kept work is being put back: if it is found, that went wrong. */
export interface Kept {
  present: KeptRun;
  changes: KeptChanges;
  earlier: KeptRun;
  draft: Draft;
  opening: true;
}

type Key = keyof Kept;

const DATABASE = "blade-metallurgy-workbench";
/** Changes with the form of what is kept; an older form is dropped. */
const VERSION = 1;
const STORE = "runs";

function settled<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.addEventListener("success", () => resolve(request.result));
    request.addEventListener("error", () => reject(request.error));
  });
}

function open(): Promise<IDBDatabase> {
  const request = indexedDB.open(DATABASE, VERSION);
  request.addEventListener("upgradeneeded", () => {
    const { result } = request;
    for (const name of result.objectStoreNames) result.deleteObjectStore(name);
    result.createObjectStore(STORE);
  });
  return settled(request);
}

/** The workbench's own place in the browser (IndexedDB). Nothing in it ever leaves this machine. */
export class KeptStore {
  private constructor(private readonly database: IDBDatabase) {
    // Another window with a newer version of the page must not wait for this one.
    database.addEventListener("versionchange", () => database.close());
  }

  /** `undefined` where the browser keeps nothing, as in private windows of some browsers. */
  static async open(): Promise<KeptStore | undefined> {
    try {
      return new KeptStore(await open());
    } catch {
      return undefined;
    }
  }

  async read<K extends Key>(key: K): Promise<Kept[K] | undefined> {
    const store = this.database.transaction(STORE).objectStore(STORE);
    return settled<Kept[K] | undefined>(store.get(key));
  }

  /**
   * Writes at once: the change is on its way when this returns, so that it may be called while the page goes.
   *
   * @param content - `undefined` removes what is kept.
   * @returns Settles once it is written.
   */
  write<K extends Key>(key: K, content: Kept[K] | undefined): Promise<void> {
    const transaction = this.database.transaction(STORE, "readwrite");
    const store = transaction.objectStore(STORE);
    if (content === undefined) store.delete(key);
    else store.put(content, key);
    const written = new Promise<void>((resolve, reject) => {
      transaction.addEventListener("complete", () => resolve());
      transaction.addEventListener("abort", () => reject(transaction.error));
    });
    transaction.commit();
    return written;
  }
}

const LOCK = "blade-metallurgy-workbench";
/** A page that was just left gives its claim up within this time. */
const CLAIM_MS = 1500;

/**
 * Claims the place for this window as long as it stands.
 *
 * @returns False where another window has it: two that write in turn would lose each other's work.
 */
export function claim(): Promise<boolean> {
  return new Promise((resolve) => {
    const hold = () => {
      resolve(true);
      return new Promise<never>(() => undefined);
    };
    const signal = AbortSignal.timeout(CLAIM_MS);
    navigator.locks.request(LOCK, { signal }, hold).catch(() => resolve(false));
  });
}
