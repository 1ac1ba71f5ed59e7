import { createHash } from "node:crypto";
import { existsSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/** Folder of one run of the tests, which its configuration makes and takes away; without it nothing is kept. */
const { TESTS_KEPT } = process.env;

const made = new Map<string, Promise<Uint8Array>>();

/** So long one process waits for what another has begun, in milliseconds; then it makes its own. */
const PATIENCE = 60_000;

/** True where nobody has begun to make a file. */
function beginsFirst(file: string): boolean {
  try {
    writeFileSync(`${file}.begun`, "", { flag: "wx" });
    return true;
  } catch {
    return false;
  }
}

async function untilThere(file: string): Promise<void> {
  const end = Date.now() + PATIENCE;
  while (!existsSync(file) && Date.now() < end) await new Promise((done) => setTimeout(done, 200));
}

async function readOrMake(name: string, make: () => Promise<Uint8Array> | Uint8Array): Promise<Uint8Array> {
  if (TESTS_KEPT === undefined) return make();
  const file = join(TESTS_KEPT, createHash("sha256").update(name).digest("hex"));
  if (!beginsFirst(file)) await untilThere(file);
  if (existsSync(file)) return new Uint8Array(readFileSync(file));
  const bytes = await make();
  // Put in place whole: another process may look for it.
  writeFileSync(`${file}.${process.pid}`, bytes);
  renameSync(`${file}.${process.pid}`, file);
  return bytes;
}

/**
 * What takes long to make and is only read: made by the first test file of a run that asks, for all its processes.
 *
 * @param name - Says all that it is made from, but for the sources: these are the same throughout a run.
 */
export function kept(name: string, make: () => Promise<Uint8Array> | Uint8Array): Promise<Uint8Array> {
  const known = made.get(name) ?? readOrMake(name, make);
  made.set(name, known);
  return known;
}
