import { deflateSync } from "fflate";
import { checksum } from "./checksum";
import { LOCAL_SIZE, type ZipEntry } from "./zip-directory";

const VERSION_NEEDED = 20;
/** 1 January 1980, the earliest date a zip can hold: what we write does not depend on the clock. */
const DATE = 0x21;
const UTF8_NAMES = 0x800;
const DEFLATED = 8;

interface Packed {
  readonly name: Uint8Array;
  readonly data: Uint8Array;
  readonly size: number;
  readonly checksum: number;
}

function pack(name: string, bytes: Uint8Array): Packed {
  return {
    name: new TextEncoder().encode(name),
    data: deflateSync(bytes, { level: 6 }),
    size: bytes.length,
    checksum: checksum(bytes),
  };
}

/** The fields that a local header and a directory record share, from "version needed" on. */
function writeShared(view: DataView, at: number, part: Packed): void {
  view.setUint16(at, VERSION_NEEDED, true);
  view.setUint16(at + 2, UTF8_NAMES, true);
  view.setUint16(at + 4, DEFLATED, true);
  view.setUint16(at + 8, DATE, true);
  view.setUint32(at + 10, part.checksum, true);
  view.setUint32(at + 14, part.data.length, true);
  view.setUint32(at + 18, part.size, true);
  view.setUint16(at + 22, part.name.length, true);
}

function localPart(part: Packed): Uint8Array[] {
  const header = new Uint8Array(LOCAL_SIZE);
  const view = new DataView(header.buffer);
  view.setUint32(0, 0x04034b50, true);
  writeShared(view, 4, part);
  return [header, part.name, part.data];
}

function recordOf(part: Packed, start: number): Uint8Array[] {
  const record = new Uint8Array(46);
  const view = new DataView(record.buffer);
  view.setUint32(0, 0x02014b50, true);
  view.setUint16(4, VERSION_NEEDED, true);
  writeShared(view, 6, part);
  view.setUint32(42, start, true);
  return [record, part.name];
}

function movedRecord(record: Uint8Array, start: number): Uint8Array {
  const moved = new Uint8Array(record);
  new DataView(moved.buffer).setUint32(42, start, true);
  return moved;
}

function endRecord(count: number, size: number, start: number): Uint8Array {
  const end = new Uint8Array(22);
  const view = new DataView(end.buffer);
  view.setUint32(0, 0x06054b50, true);
  view.setUint16(8, count, true);
  view.setUint16(10, count, true);
  view.setUint32(12, size, true);
  view.setUint32(16, start, true);
  return end;
}

const lengthOf = (pieces: readonly Uint8Array[]) => pieces.reduce((sum, { length }) => sum + length, 0);

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(lengthOf(pieces));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/**
 * Writes a zip anew with some parts replaced, added or left out.
 *
 * @param source - The file that was read.
 * @param entries - Its list of parts. A part that is not replaced is copied packed as it was, header and all.
 * @param changes - New bytes by name; `undefined` leaves the part out. New names are added at the end.
 */
export function rewriteZip(
  source: Uint8Array,
  entries: readonly ZipEntry[],
  changes: ReadonlyMap<string, Uint8Array | undefined>,
): Uint8Array {
  const body: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let count = 0;
  let position = 0;
  const add = (pieces: readonly Uint8Array[], record: (start: number) => readonly Uint8Array[]) => {
    body.push(...pieces);
    directory.push(...record(position));
    position += lengthOf(pieces);
    count += 1;
  };
  const addPacked = (part: Packed) => add(localPart(part), (start) => recordOf(part, start));
  for (const entry of entries) {
    const changed = changes.get(entry.name);
    if (changed !== undefined) addPacked(pack(entry.name, changed));
    else if (!changes.has(entry.name))
      add([source.subarray(entry.start, entry.end)], (start) => [movedRecord(entry.record, start)]);
  }
  const known = new Set(entries.map(({ name }) => name));
  for (const [name, bytes] of changes) {
    if (bytes !== undefined && !known.has(name)) addPacked(pack(name, bytes));
  }
  return joined([...body, ...directory, endRecord(count, lengthOf(directory), position)]);
}
