import { columnLetters } from "../../formula/addresses";
import { splitAddress } from "../../formula/references";
import { quotedSheet } from "../../formula/sheet-names";
import type { HostPort, HostRows, HostValue } from "../../host/port";

/** Headings of the planning workbook's Lines sheet, by what the pane takes from a line. */
export const LINE_HEADINGS = {
  item: "Item",
  steel: "Steel",
  use: "Use",
  quench: "Quench",
  grind: "Grind",
  length: "Length mm",
  width: "Width mm",
  thickness: "Thickness mm",
  edge: "Behind edge mm",
  target: "Aim HRC",
  temper: "Temper °C",
} as const;

/** Headings of what the sheet works out about a line, which stands to the right of what is typed. */
export const ANSWER_HEADINGS = {
  status: "Against the band",
  chance: "Chance of the band",
  low: "HRC low",
  high: "HRC high",
  band: "Band HRC",
  next: "Next step",
  caution: "Caution",
} as const;

export type LineFact = keyof typeof LINE_HEADINGS;
export type LineAnswer = keyof typeof ANSWER_HEADINGS;
type Told<Key extends string> = Readonly<Partial<Record<Key, string>>>;

/** A line of the run as far as its row is filled in. */
export interface SelectedLine {
  readonly name: string;
  readonly facts: Told<LineFact>;
  readonly answers: Told<LineAnswer>;
  /** Every caution of the line as a whole sentence; "" where its sheet holds none. */
  readonly cautions: string;
}

const SHEET = "Lines";
/** Where the sentences of a line stand in full, in the row of the line. */
export const IN_FULL = { sheet: "Recipe", heading: "Cautions in full" } as const;
/** Rows as one counts them in the sheet. */
const HEADING_ROW = 4;
const FIRST_LINE_ROW = 5;
const LAST_LINE_ROW = 504;
const LAST_COLUMN = columnLetters(51);

const text = (value: HostValue | undefined): string =>
  value === null || value === undefined || typeof value === "object" ? "" : String(value).trim();

function rowOf(address: string): number {
  return Number(/\d+$/.exec(address)?.[0] ?? 0);
}

/** The row of the Lines sheet that a selected cell speaks of: its own, or that of the line named in its first column. */
async function lineRow(port: HostPort, address: string): Promise<number | undefined> {
  const { sheet } = splitAddress(address);
  const row = rowOf(address);
  if (sheet === null || row < FIRST_LINE_ROW) return undefined;
  if (sheet === SHEET) return row;
  const own = quotedSheet(sheet);
  const wanted = [
    `${own}!A${HEADING_ROW}:B${HEADING_ROW}`,
    `${own}!A${row}:B${row}`,
    `${SHEET}!A${FIRST_LINE_ROW}:A${LAST_LINE_ROW}`,
  ];
  const [heads, cells, names] = await port.readValues(wanted, address);
  const column = heads?.[0]?.findIndex((cell) => text(cell) === "Line") ?? -1;
  const name = text(cells?.[0]?.[column]);
  const found = names?.findIndex(([cell]) => text(cell) === name) ?? -1;
  return column < 0 || name === "" || found < 0 ? undefined : FIRST_LINE_ROW + found;
}

/** The cells of a row below the wanted headings, blank ones left out. */
function toldBelow<Key extends string>(
  wanted: Readonly<Record<Key, string>>,
  [heads = []]: HostRows,
  [cells = []]: HostRows,
): Told<Key> {
  const headings = heads.map(text);
  const told: Partial<Record<Key, string>> = {};
  for (const key of Object.keys(wanted) as Key[]) {
    const value = text(cells[headings.indexOf(wanted[key])]);
    if (value !== "") told[key] = value;
  }
  return told;
}

interface LineRow {
  readonly row: number;
  readonly heads: HostRows;
  readonly cells: HostRows;
}

/** The row of the selected line as it stands in the sheet; `null` where there is none. */
async function selectedRow(port: HostPort): Promise<LineRow | null> {
  const selected = await port.selection();
  if (selected === null) return null;
  const row = await lineRow(port, selected.address);
  if (row === undefined) return null;
  const wanted = [HEADING_ROW, row].map((at) => `${SHEET}!A${at}:${LAST_COLUMN}${at}`);
  const [heads, cells] = await port.readValues(wanted, selected.address);
  if (heads == null || cells == null) return null;
  return text(cells[0]?.[0]) === "" || text(heads[0]?.[0]) !== "Line" ? null : { row, heads, cells };
}

/** The cautions of a line in whole sentences, where the sheet that holds them has the line in the same row. */
async function cautionsInFull(port: HostPort, row: number, name: string): Promise<string> {
  const { sheet, heading } = IN_FULL;
  const wanted = [HEADING_ROW, row].map((at) => `${sheet}!A${at}:${LAST_COLUMN}${at}`);
  const [heads, cells] = await port.readValues(wanted, `${sheet}!A1`);
  if (text(cells?.[0]?.[0]) !== name) return "";
  const column = heads?.[0]?.map(text).indexOf(heading) ?? -1;
  const told = text(cells?.[0]?.[column]);
  return told === "none" ? "" : told;
}

/**
 * The line of the run that the selection stands on.
 *
 * @returns `null` where the workbook has no planning sheet, or the row names no line.
 */
export async function selectedLine(port: HostPort): Promise<SelectedLine | null> {
  const found = await selectedRow(port);
  if (found === null) return null;
  const { heads, cells } = found;
  const name = text(cells[0]?.[0]);
  return {
    name,
    cautions: await cautionsInFull(port, found.row, name),
    facts: toldBelow(LINE_HEADINGS, heads, cells),
    answers: toldBelow(ANSWER_HEADINGS, heads, cells),
  };
}

/** Whether the run still has a line of a name: another workbook may stand in the place of the one it was read in. */
export async function isInRun(port: HostPort, name: string): Promise<boolean> {
  const [names] = await port.readValues([`${SHEET}!A${FIRST_LINE_ROW}:A${LAST_LINE_ROW}`], `${SHEET}!A1`);
  return names?.some(([cell]) => text(cell) === name) ?? false;
}

/** A cell of the selected line that is typed. */
export interface LineCell {
  readonly line: string;
  /** What stands in it; "" for nothing. */
  readonly held: string;
  /** Writes a constant into it. */
  write(value: string): Promise<void>;
}

/** The cell of a fact of the line that the selection stands on; `null` where there is no such line. */
export async function lineCell(port: HostPort, fact: LineFact): Promise<LineCell | null> {
  const found = await selectedRow(port);
  const column = found?.heads[0]?.findIndex((head) => text(head) === LINE_HEADINGS[fact]) ?? -1;
  if (found === null || column < 0) return null;
  const { row, cells } = found;
  const work = { signal: new AbortController().signal, progress: () => undefined };
  return {
    line: text(cells[0]?.[0]),
    held: text(cells[0]?.[column]),
    async write(value) {
      await port.replaceFormulas([{ sheet: SHEET, row: row - 1, column, formula: value }], work);
    },
  };
}
