import { createHash } from "node:crypto";
import { readdirSync, readFileSync, statSync } from "node:fs";
import { type Cell, Workbook } from "@cj-tech-master/excelts";
import { unzipSync } from "fflate";
import { FileRefusal } from "../../src/workbook/file/package/file-refusal";
import { patchWorkbook } from "../../src/workbook/file/patch/patch-workbook";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";

// Workbooks of other programs, which lie outside the repository: node src/cli/start.cjs tests/interchange/foreign-workbooks.ts
// FOLDER ... Each is opened, recalculated, given one more figure, written, and read again by a library that is not ours.

/** A cell as the other library reads it. */
interface Read {
  readonly formula: string;
  readonly value: unknown;
}

type Cells = ReadonlyMap<string, Read>;

/** A value as text; figures to twelve places, since programs print the last ones differently. */
function plain(value: unknown): string {
  if (typeof value === "number") return String(Number(value.toPrecision(12)));
  return value instanceof Date ? value.toISOString() : (JSON.stringify(value) ?? "");
}

const readCell = (cell: Cell): Read =>
  cell.formula ? { formula: cell.formula, value: cell.result } : { formula: "", value: cell.value };

async function cellsOf(bytes: Uint8Array): Promise<Cells> {
  const book = new Workbook();
  await book.xlsx.load(bytes);
  const cells = new Map<string, Read>();
  for (const sheet of book.worksheets) {
    cells.set(`${sheet.name}`, { formula: "", value: "sheet" });
    sheet.eachRow((row) => {
      row.eachCell((cell) => {
        cells.set(`${sheet.name}!${cell.address}`, readCell(cell));
      });
    });
  }
  return cells;
}

/** Functions that give another value each time, or one that the file, the day or the machine decides. */
const CHANGING = /\b(NOW|TODAY|RAND|RANDBETWEEN|RANDARRAY|CELL|INFO|OFFSET|INDIRECT|WEBSERVICE|HYPERLINK)\(/i;

/** Cells whose figure comes, over however many cells, from a function whose value changes by itself. */
function isChanging(live: ReturnType<typeof readLiveWorkbook>): boolean {
  return live.sheets.some(({ formulas }) => [...formulas.values()].some(({ typed }) => CHANGING.test(typed)));
}

interface Differences {
  readonly lost: string[];
  readonly values: string[];
}

/** What became of one cell: nothing, or the words for it; a formula's other value is no loss. */
function cellDifference(
  at: string,
  was: Read,
  is: Read | undefined,
): Partial<Record<"lost" | "value", string>> {
  if (is === undefined) return { lost: `${at}: gone` };
  if (is.formula !== was.formula) return { lost: `${at}: =${was.formula} became =${is.formula}` };
  const [before, after] = [plain(was.value), plain(is.value)];
  if (before === after) return {};
  return was.formula === ""
    ? { lost: `${at}: ${before} became ${after}` }
    : was.value === undefined
      ? {}
      : { value: `${at} =${was.formula}: ${before} became ${after}` };
}

function differences(before: Cells, after: Cells): Differences {
  const found = [...before].map(([at, was]) => cellDifference(at, was, after.get(at)));
  const added = [...after.keys()].filter((at) => !before.has(at)).map((at) => `${at}: was not there`);
  return {
    lost: [...found.flatMap(({ lost }) => lost ?? []), ...added],
    values: found.flatMap(({ value }) => value ?? []),
  };
}

/** Parts that only a sheet of the file may change. */
const MAY_CHANGE = /^xl\/(worksheets\/[^/]+\.xml|workbook\.xml|sharedStrings\.xml)$/i;

const textOf = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);

/** The chain of calculation only tells in which order to work; a patched file goes without, and nothing names it. */
const CHAIN = /<[^<>]*calcChain[^<>]*>/gi;
const withoutChain = (bytes: Uint8Array | undefined) => textOf(bytes).replace(CHAIN, "");

/** Parts that were lost, came in, or changed though no cell stands in them. */
function partsChanged(before: Uint8Array, after: Uint8Array): string[] {
  const [old, now] = [unzipSync(before), unzipSync(after)];
  const names = [...new Set([...Object.keys(old), ...Object.keys(now)])].filter(
    (name) => !/calcChain/i.test(name),
  );
  return names.filter((name) => {
    if ((old[name] === undefined) !== (now[name] === undefined)) return true;
    if (MAY_CHANGE.test(name)) return false;
    return /\.(xml|rels)$/i.test(name)
      ? withoutChain(old[name]) !== withoutChain(now[name])
      : Buffer.compare(old[name] ?? Buffer.alloc(0), now[name] ?? Buffer.alloc(0)) !== 0;
  });
}

/** Cells as they stand in the parts, for files that the other library cannot read: by part and address, their XML. */
function rawCells(bytes: Uint8Array): Map<string, string> {
  const parts = Object.entries(unzipSync(bytes)).filter(([name]) => /worksheets\/[^/]*\.xml$/i.test(name));
  const cell = /<(?:\w+:)?c\b([^>]*?)(?:\/>|>([\s\S]*?)<\/(?:\w+:)?c>)/g;
  return new Map(
    parts.flatMap(([name, part]) =>
      [...textOf(part).matchAll(cell)].map(
        ([whole, attributes = ""]) =>
          [`${name}!${/\br="([^"]*)"/.exec(attributes)?.[1] ?? ""}`, whole] as const,
      ),
    ),
  );
}

/** Typed cells whose XML is another one, and formulas whose text is. */
function rawFaults(before: Uint8Array, after: Uint8Array): string[] {
  const now = rawCells(after);
  const formula = (cell: string) => /<(?:\w+:)?f\b[\s\S]*?(?:\/>|<\/(?:\w+:)?f>)/.exec(cell)?.[0];
  return [...rawCells(before)].flatMap(([at, was]) => {
    const is = now.get(at) ?? "";
    const isSame = formula(was) === undefined ? is === was : formula(is) === formula(was);
    return isSame ? [] : [`${at}: ${was} became ${is}`];
  });
}

/** A figure typed below everything else on the first sheet, so that the file has to be written. */
async function typedInto(bytes: Uint8Array): Promise<readonly [Uint8Array, string]> {
  const [sheet] = readLiveWorkbook(bytes).sheets;
  if (sheet === undefined) return [bytes, ""];
  const row =
    sheet.stored.rows.reduce((last, { cells }) => Math.max(last, ...cells.map((cell) => cell.row)), 0) + 2;
  const cell = { row, column: 0, content: { value: 4711 } };
  const { bytes: written } = await patchWorkbook(bytes, new Map([[sheet.listed.name, [cell]]]));
  return [written, `${sheet.listed.name}!A${row + 1}`];
}

function filesIn(path: string): string[] {
  if (statSync(path).isFile()) return [path];
  return readdirSync(path, { recursive: true, encoding: "utf8" })
    .map((file) => `${path}/${file}`)
    .filter((file) => /\.xls[xm]$/i.test(file) && statSync(file).isFile());
}

const counts = {
  files: 0,
  opened: 0,
  refused: 0,
  crashed: 0,
  unread: 0,
  damaged: 0,
  formulas: 0,
  left: 0,
  others: 0,
};

function tell(file: string, what: string, lines: readonly string[] = []): void {
  console.log(`${what}: ${file}`);
  for (const line of lines.slice(0, 6)) console.log(`    ${line.slice(0, 200)}`);
  if (lines.length > 6) console.log(`    and ${lines.length - 6} more`);
}

/** What the other library finds changed in the cells; told apart, what formulas come to now. */
async function cellFaults(
  file: string,
  bytes: Uint8Array,
  written: Uint8Array,
  added: string,
): Promise<string[]> {
  const [before, after] = [await cellsOf(bytes), new Map(await cellsOf(written))];
  if (plain(after.get(added)?.value) !== "4711")
    throw new Error("it does not see the cells of the first sheet");
  if (!before.has(added)) after.delete(added);
  const { lost, values } = differences(before, after);
  counts.others += values.length;
  const isByItself = values.length > 0 && isChanging(readLiveWorkbook(bytes));
  if (values.length > 0)
    tell(file, isByItself ? "other values (it counts days or chance)" : "OTHER VALUES", values);
  return lost;
}

async function tryFile(file: string, bytes: Uint8Array): Promise<void> {
  const done = await recalculate(bytes).catch((fault: unknown) => fault as Error);
  if (done instanceof Error) {
    const isRefusal = done instanceof FileRefusal;
    counts[isRefusal ? "refused" : "crashed"] += 1;
    tell(file, isRefusal ? "refused" : "CRASHED", [done.message]);
    return;
  }
  counts.opened += 1;
  counts.formulas += done.formulas;
  counts.left += done.left.length;
  const [written, added] = await typedInto(done.bytes);
  const faults = partsChanged(bytes, written);
  const cells = await cellFaults(file, bytes, written, added).catch((fault: Error) => fault);
  if (cells instanceof Error) {
    counts.unread += 1;
    tell(file, "the other library cannot read it, its XML is compared", [cells.message]);
    faults.push(...rawFaults(bytes, written));
  } else faults.push(...cells);
  if (faults.length === 0) return;
  counts.damaged += 1;
  tell(file, "DAMAGED", faults);
}

async function tryAll(paths: readonly string[]): Promise<void> {
  const seen = new Set<string>();
  for (const file of paths.flatMap(filesIn)) {
    const bytes = new Uint8Array(readFileSync(file));
    const digest = createHash("sha256").update(bytes).digest("hex");
    if (seen.has(digest)) continue;
    seen.add(digest);
    counts.files += 1;
    await tryFile(file, bytes);
  }
  console.log(
    `${counts.files} different workbooks: ${counts.opened} opened, ${counts.refused} refused with a sentence, ${counts.crashed} ended in an error, ` +
      `${counts.damaged} damaged; ${counts.unread} that the other library cannot read; ${counts.formulas} formulas, ${counts.left} left as they were, ` +
      `${counts.others} of another value than in the file`,
  );
  process.exitCode = counts.damaged + counts.crashed === 0 ? 0 : 1;
}

void tryAll(process.argv.slice(2));
