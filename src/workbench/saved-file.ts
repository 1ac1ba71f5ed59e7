import type { IWorkbookData } from "@univerjs/core";
import { version } from "../../package.json";

const PROGRAM = "Blade Metallurgy workbench";

const REFUSED = `This is not a file of the ${PROGRAM}.`;

interface SavedFile {
  readonly program: typeof PROGRAM;
  readonly version: string;
  readonly workbook: IWorkbookData;
}

export function savedText(workbook: IWorkbookData): string {
  const file: SavedFile = { program: PROGRAM, version, workbook };
  return JSON.stringify(file);
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isWorkbook(value: unknown): boolean {
  if (!isRecord(value) || !isRecord(value.sheets) || !Array.isArray(value.sheetOrder)) return false;
  const { sheets, sheetOrder } = value;
  return sheetOrder.length > 0 && sheetOrder.every((id) => isRecord(sheets[String(id)]));
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new Error(REFUSED);
  }
}

/**
 * Reads what `savedText` wrote.
 *
 * @throws Error with a sentence where the text is something else.
 */
export function readSaved(text: string): IWorkbookData {
  const file = parsed(text);
  if (!isRecord(file) || file.program !== PROGRAM || !isWorkbook(file.workbook)) throw new Error(REFUSED);
  return (file as unknown as SavedFile).workbook;
}
