import type { IRange, IResources, IWorkbookData } from "@univerjs/core";
import type { TableInput } from "../../engine/workbook-input";
import type { Rectangle } from "../../formula/addresses";
import type { OfferedWords, WordColor, WorkbookData } from "../../workbook/model/workbook-data";

const COLOURS = "SHEET_CONDITIONAL_FORMATTING_PLUGIN";
const LISTS = "SHEET_DATA_VALIDATION_PLUGIN";
const NAMES = "SHEET_DEFINED_NAME_PLUGIN";
const TABLES = "SHEET_TABLE_PLUGIN";

export const rangeOf = ({ row, column, lastRow, lastColumn }: Rectangle): IRange => ({
  startRow: row,
  endRow: lastRow,
  startColumn: column,
  endColumn: lastColumn,
});

export const rectangleOf = ({ startRow, endRow, startColumn, endColumn }: IRange): Rectangle => ({
  row: startRow,
  column: startColumn,
  lastRow: endRow,
  lastColumn: endColumn,
});

function colourRule({ areas, word, fill }: WordColor, index: number) {
  return {
    cfId: `color-${index}`,
    ranges: areas.map(rangeOf),
    stopIfTrue: false,
    rule: {
      type: "highlightCell",
      subType: "text",
      operator: "containsText",
      value: word,
      style: { bg: { rgb: fill } },
    },
  };
}

/** What is said of a word that a list does not offer. */
const NOT_LISTED =
  "This word is not on the list. It may stand here where the functions know it; the answers in the row say so.";

/** Lists only offer: a word outside them may be typed, and the functions say what is wrong with it. */
function listRule({ areas, words, range }: OfferedWords, index: number) {
  const offered =
    range === undefined ? words?.map((word) => word.replaceAll(",", " ")).join(",") : `=${range}`;
  return {
    uid: `list-${index}`,
    type: "list",
    formula1: offered,
    ranges: areas.map(rangeOf),
    allowBlank: true,
    // Said where the pointer rests on a cell with another word; as a remark (0) it keeps nothing out.
    showErrorMessage: true,
    error: NOT_LISTED,
    errorStyle: 0,
    renderMode: 1,
  };
}

const filled = ({ words, range }: OfferedWords) => range !== undefined || (words?.length ?? 0) > 0;

function tableData({ name, row, column, rows, headings }: TableInput) {
  const id = `table-${name}`;
  const lastColumn = column + headings.length - 1;
  return {
    id,
    name,
    range: rangeOf({ row, column, lastRow: row + rows - 1, lastColumn }),
    options: { showHeader: true, showFooter: false },
    filters: { tableColumnFilterList: [] },
    columns: headings.map((displayName, at) => ({
      id: `${id}-${at}`,
      displayName,
      dataType: "string",
      formula: "",
      meta: {},
      style: {},
    })),
    meta: {},
  };
}

/** Lists, colours, names and tables. They come with the workbook, so that the first undo does not undo them. */
export function resourcesOf(workbook: WorkbookData, idOf: (sheet: string) => string): IResources {
  const bySheet = (content: (sheet: WorkbookData["sheets"][number]) => unknown) =>
    JSON.stringify(Object.fromEntries(workbook.sheets.map((sheet) => [idOf(sheet.name), content(sheet)])));
  const names = Object.entries(workbook.names).map(([name, formulaOrRefString]) => [
    name,
    { id: name, name, formulaOrRefString, localSheetId: "AllDefaultWorkbook" },
  ]);
  const tables = ({ name }: { readonly name: string }) => ({
    tables: workbook.tables.filter(({ sheet }) => sheet === name).map(tableData),
    tableFilteredOutRows: [],
  });
  return [
    { name: COLOURS, data: bySheet(({ colors }) => colors.map(colourRule)) },
    { name: LISTS, data: bySheet(({ offers }) => offers.filter(filled).map(listRule)) },
    { name: NAMES, data: JSON.stringify(Object.fromEntries(names)) },
    { name: TABLES, data: bySheet(tables) },
  ];
}

type ColourRule = ReturnType<typeof colourRule>;
type ListRule = ReturnType<typeof listRule>;
type TableData = ReturnType<typeof tableData>;

function resource<T>(resources: IResources | undefined, wanted: string): Readonly<Record<string, T>> {
  const data = resources?.find(({ name }) => name === wanted)?.data;
  return data === undefined || data === "" ? {} : (JSON.parse(data) as Record<string, T>);
}

function colourFrom({ ranges, rule }: ColourRule): WordColor[] {
  const fill = rule.style?.bg?.rgb;
  if (rule.subType !== "text" || rule.operator !== "containsText" || fill === undefined) return [];
  return [{ areas: ranges.map(rectangleOf), word: rule.value, fill }];
}

function offerFrom({ type, formula1 = "", ranges }: ListRule): OfferedWords[] {
  if (type !== "list" || formula1 === "") return [];
  const areas = ranges.map(rectangleOf);
  return formula1.startsWith("=")
    ? [{ areas, range: formula1.slice(1) }]
    : [{ areas, words: formula1.split(",") }];
}

/** Lists and colours of one sheet of a saved grid. */
export function rulesIn(saved: IWorkbookData, id: string): { offers: OfferedWords[]; colors: WordColor[] } {
  return {
    offers: (resource<ListRule[]>(saved.resources, LISTS)[id] ?? []).flatMap(offerFrom),
    colors: (resource<ColourRule[]>(saved.resources, COLOURS)[id] ?? []).flatMap(colourFrom),
  };
}

export function namesIn(saved: IWorkbookData): Record<string, string> {
  const names = Object.values(resource<{ name: string; formulaOrRefString: string }>(saved.resources, NAMES));
  return Object.fromEntries(names.map(({ name, formulaOrRefString }) => [name, formulaOrRefString]));
}

/** Where a table stands, its headings counted with its rows. */
export interface TableArea {
  readonly sheetId: string;
  readonly row: number;
  readonly rows: number;
  readonly column: number;
  readonly columns: number;
}

type Tables = { readonly tables?: readonly TableData[] };

/** The tables of a workbook as the grid keeps them. */
export function tableAreas(resources: IResources): TableArea[] {
  return Object.entries(resource<Tables>(resources, TABLES)).flatMap(([sheetId, { tables = [] }]) =>
    tables.map(({ range, columns }) => ({
      sheetId,
      row: range.startRow,
      rows: range.endRow - range.startRow + 1,
      column: range.startColumn,
      columns: columns.length,
    })),
  );
}

export function tablesIn(saved: IWorkbookData): TableInput[] {
  return Object.entries(resource<Tables>(saved.resources, TABLES)).flatMap(([id, { tables = [] }]) =>
    tables.map(({ name, range, columns }) => ({
      name,
      sheet: saved.sheets[id]?.name ?? "",
      row: range.startRow,
      column: range.startColumn,
      rows: range.endRow - range.startRow + 1,
      headings: columns.map(({ displayName }) => displayName),
    })),
  );
}
