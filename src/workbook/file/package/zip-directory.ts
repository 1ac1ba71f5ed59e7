import { FileRefusal } from "./file-refusal";

/** One part as the zip directory lists it. */
export interface ZipEntry {
  readonly name: string;
  /** 0 stored, 8 deflated. */
  readonly method: number;
  readonly checksum: number;
  readonly packedSize: number;
  readonly size: number;
  /** Where its local header begins, and where the next thing in the file begins. */
  readonly start: number;
  readonly end: number;
  /** Its own record in the directory, as found. */
  readonly record: Uint8Array;
}

const END_SIGNATURE = 0x06054b50;
const RECORD_SIGNATURE = 0x02014b50;
const LOCAL_SIGNATURE = 0x04034b50;
const END_SIZE = 22;
const RECORD_SIZE = 46;
export const LOCAL_SIZE = 30;
const LONGEST_COMMENT = 0xffff;
const ENCRYPTED = 0x1;

/** Bounds on what a workbook may unpack to; a file made to exhaust memory names sizes beyond them. */
export const LIMITS = { entries: 20_000, part: 96 * 2 ** 20, total: 256 * 2 ** 20 };

const damaged = (what: string) =>
  new FileRefusal(
    `The file is damaged or cut short (${what}): open it in a spreadsheet program and save it again.`,
  );

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function findEnd(view: DataView): number {
  const lowest = Math.max(0, view.byteLength - END_SIZE - LONGEST_COMMENT);
  for (let at = view.byteLength - END_SIZE; at >= lowest; at -= 1) {
    if (view.getUint32(at, true) === END_SIGNATURE) return at;
  }
  throw damaged("its list of parts is missing");
}

type Listed = Omit<ZipEntry, "end">;

function readRecord(bytes: Uint8Array, view: DataView, at: number): { listed: Listed; next: number } {
  if (at + RECORD_SIZE > bytes.length || view.getUint32(at, true) !== RECORD_SIGNATURE)
    throw damaged("its list of parts is broken");
  const nameLength = view.getUint16(at + 28, true);
  const next = at + RECORD_SIZE + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  if (next > bytes.length) throw damaged("its list of parts is broken");
  const name = new TextDecoder().decode(bytes.subarray(at + RECORD_SIZE, at + RECORD_SIZE + nameLength));
  if (view.getUint16(at + 8, true) & ENCRYPTED)
    throw new FileRefusal("The file is locked with a zip password: unpack it and give the workbook inside.");
  const listed = {
    name,
    method: view.getUint16(at + 10, true),
    checksum: view.getUint32(at + 16, true),
    packedSize: view.getUint32(at + 20, true),
    size: view.getUint32(at + 24, true),
    start: view.getUint32(at + 42, true),
    record: bytes.subarray(at, next),
  };
  return { listed, next };
}

function checkSizes(entries: readonly Listed[]): void {
  const total = entries.reduce((sum, { size }) => sum + size, 0);
  const largest = Math.max(0, ...entries.map(({ size }) => size));
  if (total <= LIMITS.total && largest <= LIMITS.part) return;
  const megabytes = Math.round(Math.max(total, largest) / 2 ** 20);
  throw new FileRefusal(
    `The file would unpack to ${megabytes} MB, more than a planning workbook needs (at most ${LIMITS.total / 2 ** 20} MB, ` +
      `${LIMITS.part / 2 ** 20} MB a part): it may be made to do harm. Delete unused sheets, or save it anew.`,
  );
}

/** Each part reaches to the next one; two that overlap would let a small file unpack without end. */
function withEnds(listed: readonly Listed[], directory: number, view: DataView): ZipEntry[] {
  const order = [...listed].sort((a, b) => a.start - b.start);
  const ends = new Map(order.map((entry, index) => [entry, order[index + 1]?.start ?? directory]));
  return listed.map((entry) => {
    const end = ends.get(entry) ?? directory;
    if (entry.start + LOCAL_SIZE > end || end > directory) throw damaged(`part ${entry.name}`);
    if (view.getUint32(entry.start, true) !== LOCAL_SIGNATURE) throw damaged(`part ${entry.name}`);
    if (dataStart(view, entry.start) + entry.packedSize > end) throw damaged(`part ${entry.name}`);
    return { ...entry, end };
  });
}

/** Where the packed bytes of a part begin, after its local header. */
export function dataStart(view: DataView, start: number): number {
  return start + LOCAL_SIZE + view.getUint16(start + 26, true) + view.getUint16(start + 28, true);
}

/**
 * Reads the list of parts of a zip file, in its own order, without unpacking anything.
 *
 * @throws FileRefusal for a file that is cut short, locked, larger than the limits, or whose parts overlap.
 */
export function readDirectory(bytes: Uint8Array): ZipEntry[] {
  const view = viewOf(bytes);
  if (bytes.length < END_SIZE) throw damaged("it is too short");
  const end = findEnd(view);
  const count = view.getUint16(end + 10, true);
  const directory = view.getUint32(end + 16, true);
  if (count === 0xffff || directory === 0xffffffff)
    throw new FileRefusal(
      "The file is packed in the form for files over 4 GB: save it again in a spreadsheet program.",
    );
  if (count > LIMITS.entries) throw damaged(`${count} parts`);
  const listed: Listed[] = [];
  let at = directory;
  for (let index = 0; index < count; index += 1) {
    const read = readRecord(bytes.subarray(0, end), view, at);
    listed.push(read.listed);
    at = read.next;
  }
  checkSizes(listed);
  if (new Set(listed.map(({ name }) => name.toLowerCase())).size !== listed.length)
    throw damaged("two parts of one name");
  return withEnds(listed, directory, view);
}
