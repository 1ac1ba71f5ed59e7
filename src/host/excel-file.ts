import { sentenceOf } from "../core/refusal";
import { knows, writing } from "./excel-run";

/** Bytes that Excel hands over at a time; its documented maximum. */
const SLICE = 4_194_304;

/** The open workbook as it would be saved now. */
export interface WorkbookFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** One of the older calls of office.js, which answer by calling back, as a promise. */
function answered<T>(call: (done: (result: Office.AsyncResult<T>) => void) => void): Promise<T> {
  return new Promise((resolve, reject) => {
    call((result) => {
      if (result.status === Office.AsyncResultStatus.Succeeded) resolve(result.value);
      else reject(new Error(result.error.message));
    });
  });
}

async function contentsOf(file: Office.File): Promise<Uint8Array> {
  const bytes = new Uint8Array(file.size);
  for (let at = 0, place = 0; at < file.sliceCount; at += 1) {
    const slice = await answered<Office.Slice>((done) => file.getSliceAsync(at, done));
    bytes.set(new Uint8Array(slice.data), place);
    place += slice.size;
  }
  return bytes;
}

/** Last part of the workbook's address; a workbook that was never saved has none. */
function nameOf(address: string | null | undefined): string {
  const last = (address ?? "").split(/[\\/]/).at(-1) ?? "";
  return last === "" ? "workbook.xlsx" : decodeURIComponent(last);
}

/**
 * Reads the open workbook, changes that were not saved included.
 *
 * @throws Error with a sentence for the smith.
 */
export async function workbookFile(): Promise<WorkbookFile> {
  const { document } = Office.context;
  try {
    const file = await answered<Office.File>((done) =>
      document.getFileAsync(Office.FileType.Compressed, { sliceSize: SLICE }, done),
    );
    try {
      return { name: nameOf(document.url), bytes: await contentsOf(file) };
    } finally {
      // Excel holds at most two files open for an add-in.
      file.closeAsync();
    }
  } catch (problem) {
    const why = sentenceOf(problem);
    throw new Error(
      `Excel did not hand over the workbook (${why}): end what you type in a cell and try again`,
    );
  }
}

const AT_ONCE = 32_768;

function base64(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += AT_ONCE)
    parts.push(String.fromCharCode(...bytes.subarray(at, at + AT_ONCE)));
  return btoa(parts.join(""));
}

/**
 * Opens bytes as a new workbook beside the present one; it has no name until it is saved.
 *
 * @throws Error with a sentence for the smith.
 */
export async function openAsNew(bytes: Uint8Array): Promise<void> {
  if (!knows("1.8")) throw new Error("This Excel cannot open a new workbook for an add-in: it is too old");
  await writing("the new workbook", () => Excel.createWorkbook(base64(bytes)));
}
