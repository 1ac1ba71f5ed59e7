import { type Reference, readReference, splitAddress } from "../formula/references";
import { errorIn, OF_ERRORS } from "./excel-errors";
import { knows } from "./excel-run";
import {
  ENGLISH,
  type FilledBy,
  type HostRows,
  type HostValue,
  type SelectedCell,
  type Separators,
} from "./port";

/** More cells than this are not read for an explanation: a web page has 5 MB for one answer. */
const MAX_CELLS = 20_000;

const OF_CELL = ["address", "formulas", "formulasLocal", "text", "rowIndex", "columnIndex"] as const;

/** A number as it is shown, with a point; empty where it is shown with anything else, such as a unit. */
function figureOf(shown: string, decimal: string): string {
  const figure = decimal === "." ? shown : shown.replace(decimal, ".");
  return /^-?\d+(\.\d+)?$/.test(figure) ? figure : "";
}

/**
 * Asks for the separators with the caller's next sync. Which sign stands between arguments is told by no version:
 * Excel takes the semicolon wherever the comma is the decimal sign.
 */
function separatorsOf(context: Excel.RequestContext): () => Separators {
  if (!knows("1.11")) return () => ENGLISH;
  const { application } = context.workbook;
  application.load("decimalSeparator");
  return () => {
    const decimal = application.decimalSeparator;
    return { decimal, list: decimal === "," ? ";" : "," };
  };
}

/** How formulas are written in this Excel. */
export async function separators(): Promise<Separators> {
  return Excel.run(async (context) => {
    const written = separatorsOf(context);
    await context.sync();
    return written();
  });
}

function text(range: Excel.Range, from: "formulas" | "formulasLocal" | "text"): string {
  return String(range[from][0]?.[0] ?? "");
}

/** The selected cell; where another cell's formula fills it, that one too. */
export async function activeCell(): Promise<SelectedCell> {
  return Excel.run(async (context) => {
    const cell = context.workbook.getActiveCell();
    const hasKinds = knows("1.16");
    cell.load([...OF_CELL, ...OF_ERRORS, ...(hasKinds ? (["valuesAsJson"] as const) : [])]);
    const written = separatorsOf(context);
    const parent = knows("1.12") ? cell.getSpillParentOrNullObject() : null;
    parent?.load(["address", "formulas", "rowIndex", "columnIndex"]);
    await context.sync();
    return {
      address: cell.address,
      formula: text(cell, "formulas"),
      shown: text(cell, "formulasLocal"),
      value: text(cell, "text"),
      figure: figureOf(text(cell, "text"), written().decimal),
      error: errorIn(cell, 0, 0, hasKinds),
      filledBy: parent === null ? null : filledBy(cell, parent),
      // Excel shows the sentence at the cell itself and hands it to no add-in.
      sentence: "",
    };
  });
}

function filledBy(cell: Excel.Range, parent: Excel.Range): FilledBy | null {
  if (parent.isNullObject || parent.address === cell.address) return null;
  return {
    address: parent.address,
    formula: text(parent, "formulas"),
    row: cell.rowIndex - parent.rowIndex,
    column: cell.columnIndex - parent.columnIndex,
  };
}

/** Sheets by name, those that are there. */
async function sheetsNamed(
  context: Excel.RequestContext,
  names: readonly string[],
): Promise<Map<string, Excel.Worksheet>> {
  const asked = new Map(
    names.map((name) => [name, context.workbook.worksheets.getItemOrNullObject(name)] as const),
  );
  for (const sheet of asked.values()) sheet.load("name");
  await context.sync();
  return new Map([...asked].filter(([, sheet]) => !sheet.isNullObject));
}

/** Names by name, those that are there. */
async function namesNamed(
  context: Excel.RequestContext,
  names: readonly string[],
): Promise<Map<string, Excel.NamedItem>> {
  const asked = new Map(
    names.map((name) => [name, context.workbook.names.getItemOrNullObject(name)] as const),
  );
  for (const item of asked.values()) item.load("name");
  await context.sync();
  return new Map([...asked].filter(([, item]) => !item.isNullObject));
}

/** Whole columns are read as far as the sheet is used, from its first used row. */
function cellsOf(sheet: Excel.Worksheet, { place, kind }: Reference): Excel.Range {
  const range = sheet.getRange(place);
  return kind === "cells" ? range : range.getIntersectionOrNullObject(sheet.getUsedRange(true));
}

async function rangesOf(
  context: Excel.RequestContext,
  references: readonly (Reference | null)[],
  own: string,
): Promise<(Excel.Range | null)[]> {
  const known = references.filter((reference) => reference !== null);
  const cells = known.filter(({ kind }) => kind !== "name");
  const sheets = await sheetsNamed(context, [...new Set(cells.map(({ sheet }) => sheet ?? own))]);
  const named = known.filter(({ kind }) => kind === "name");
  const names = await namesNamed(context, [...new Set(named.map(({ place }) => place))]);
  return references.map((reference) => {
    if (reference === null) return null;
    if (reference.kind === "name") return names.get(reference.place)?.getRangeOrNullObject() ?? null;
    const sheet = sheets.get(reference.sheet ?? own);
    return sheet === undefined ? null : cellsOf(sheet, reference);
  });
}

function hostValue(value: unknown, type: Excel.RangeValueType | string | undefined): HostValue {
  if (type === "Error") return { type: "Error", basicValue: String(value) };
  if (type === "Empty" || value === "") return null;
  return typeof value === "number" || typeof value === "boolean" ? value : String(value);
}

function rowsOf(range: Excel.Range): HostRows {
  return range.values.map((row, at) =>
    row.map((value, column) => hostValue(value, range.valueTypes[at]?.[column])),
  );
}

const isReadable = (range: Excel.Range | null) =>
  range !== null && !range.isNullObject && range.cellCount > 0 && range.cellCount <= MAX_CELLS;

/** Values of what a formula refers to; see the port. */
export async function readValues(
  references: readonly string[],
  beside: string,
): Promise<readonly (HostRows | null)[]> {
  if (references.length === 0) return [];
  const { sheet } = splitAddress(beside);
  return Excel.run(async (context) => {
    const ranges = await rangesOf(context, references.map(readReference), sheet ?? "");
    for (const range of ranges) range?.load(["cellCount"]);
    await context.sync();
    const readable = ranges.map((range) => (isReadable(range) ? range : null));
    for (const range of readable) range?.load(["values", "valueTypes"]);
    await context.sync();
    return readable.map((range) => (range === null ? null : rowsOf(range)));
  });
}
