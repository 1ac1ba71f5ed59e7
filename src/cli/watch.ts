import { setTimeout as pause } from "node:timers/promises";
import { stateOf } from "./files";

/** How often a file is looked at, in milliseconds: programs save in several steps. */
const EVERY_MS = 500;

/** The state of a file; `undefined` while a program is putting another in its place. */
function stateNow(path: string): string | undefined {
  try {
    return stateOf(path);
  } catch {
    return undefined;
  }
}

/** Comes back each time a file was written and has been left alone since. Ends when it is called off. */
export async function* saves(path: string, signal: AbortSignal | undefined, own: () => string | undefined) {
  let known = stateNow(path);
  for (;;) {
    const before = stateNow(path);
    try {
      await pause(EVERY_MS, undefined, { signal });
    } catch {
      return;
    }
    const state = stateNow(path);
    const isSettled = state !== undefined && state === before;
    if (!isSettled || state === known || state === own()) continue;
    known = state;
    yield state;
  }
}
