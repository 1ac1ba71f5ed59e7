import { inflateSync } from "fflate";
import { checksum } from "./checksum";
import { FileRefusal } from "./file-refusal";
import { dataStart, readDirectory, type ZipEntry } from "./zip-directory";
import { rewriteZip } from "./zip-write";

const STORED = 0;
const DEFLATED = 8;

function unreadable(name: string): FileRefusal {
  return new FileRefusal(
    `Part ${name} of the file is damaged: open the file in a spreadsheet program and save it again.`,
  );
}

function unpacked(name: string, method: number, packed: Uint8Array, size: number): Uint8Array {
  if (method === STORED) return packed;
  if (method !== DEFLATED) throw unreadable(name);
  try {
    return inflateSync(packed, { out: new Uint8Array(size) });
  } catch {
    throw unreadable(name);
  }
}

function decoded(name: string, bytes: Uint8Array): string {
  const wide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  if (wide) throw new FileRefusal(`Part ${name} of the file is not written in UTF-8: save the file anew.`);
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw unreadable(name);
  }
}

const SPACE = /[\s\ufeff]*/y;
/** What may stand before a document type: declarations and comments, each with its end. */
const BEFORE_DOCTYPE = [
  ["<?", "?>"],
  ["<!--", "-->"],
] as const;

/** True where a document type stands before the first element, behind any declarations and comments. */
function hasDoctype(text: string): boolean {
  for (let at = 0; ; ) {
    SPACE.lastIndex = at;
    SPACE.test(text);
    at = SPACE.lastIndex;
    const found = BEFORE_DOCTYPE.find(([start]) => text.startsWith(start, at));
    if (found === undefined) return /^<!DOCTYPE/i.test(text.slice(at, at + 9));
    const end = text.indexOf(found[1], at + found[0].length);
    if (end < 0) return false;
    at = end + found[1].length;
  }
}

/** Entities may be defined before the first element: refused here, however a part is read afterwards. */
function refuseEntities(name: string, text: string): void {
  if (!hasDoctype(text)) return;
  throw new FileRefusal(
    `Part ${name} of the file cannot be read: it defines entities of its own, which no spreadsheet program writes.`,
  );
}

/**
 * The parts of a workbook file. Parts are unpacked when asked for; what is written back replaces only the parts
 * that were set, everything else stays as it was, byte for byte.
 */
export class Package {
  private readonly entries: readonly ZipEntry[];
  private readonly byName: ReadonlyMap<string, ZipEntry>;
  private readonly changes = new Map<string, Uint8Array | undefined>();

  private readonly source: Uint8Array;

  constructor(given: Uint8Array) {
    // A plain view: the buffers of Node share memory where these would copy.
    this.source = new Uint8Array(given.buffer, given.byteOffset, given.byteLength);
    this.entries = readDirectory(this.source);
    // Part names count as equal whatever their case (ECMA-376 Part 2, 6.2.2.3).
    this.byName = new Map(this.entries.map((entry) => [entry.name.toLowerCase(), entry]));
  }

  /** Names of all parts, those that were added included and those that were removed left out. */
  names(): string[] {
    const added = [...this.changes.keys()].filter((name) => !this.byName.has(name.toLowerCase()));
    return [...this.entries.map(({ name }) => name), ...added].filter((name) => this.has(name));
  }

  has(name: string): boolean {
    const known = this.nameOf(name);
    return this.changes.has(known)
      ? this.changes.get(known) !== undefined
      : this.byName.has(name.toLowerCase());
  }

  /** The bytes of a part. @throws FileRefusal where the part is missing or damaged. */
  bytes(name: string): Uint8Array {
    const changed = this.changes.get(this.nameOf(name));
    if (changed !== undefined) return changed;
    const entry = this.byName.get(name.toLowerCase());
    if (entry === undefined || this.changes.has(entry.name))
      throw new FileRefusal(`The file has no part ${name}: it is not a whole workbook.`);
    const view = new DataView(this.source.buffer, this.source.byteOffset, this.source.byteLength);
    const from = dataStart(view, entry.start);
    const packed = this.source.subarray(from, from + entry.packedSize);
    const bytes = unpacked(name, entry.method, packed, entry.size);
    if (bytes.length !== entry.size || checksum(bytes) !== entry.checksum) throw unreadable(name);
    return bytes;
  }

  /** The text of a part, its byte-order mark kept. @throws FileRefusal where it is missing, damaged, not UTF-8, or defines entities. */
  text(name: string): string {
    const text = decoded(name, this.bytes(name));
    refuseEntities(name, text);
    return text;
  }

  setText(name: string, text: string): void {
    this.changes.set(this.nameOf(name), new TextEncoder().encode(text));
  }

  remove(name: string): void {
    this.changes.set(this.nameOf(name), undefined);
  }

  get isChanged(): boolean {
    return this.changes.size > 0;
  }

  /** Whether a part was set or removed since the file was read. */
  hasChanged(name: string): boolean {
    return this.changes.has(this.nameOf(name));
  }

  /** The whole file with its changes; the very bytes that were read where nothing was set. */
  save(): Uint8Array {
    return this.isChanged ? rewriteZip(this.source, this.entries, this.changes) : this.source;
  }

  private nameOf(name: string): string {
    return this.byName.get(name.toLowerCase())?.name ?? name;
  }
}
