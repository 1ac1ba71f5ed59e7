import type { Page } from "playwright-core";

/** What each cell holds and shows, by address with its sheet: `Plan!B7`. */
export type FakeCells = Readonly<Record<string, readonly [formula: string, value: string | number]>>;

type Store = Map<string, readonly [formula: string, value: string | number]>;

/** Rows and columns from 0. */
interface Corners {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/*
 * The functions below run in the page. They play just the members of the documented interface that the adapter asks
 * for; they are not the vendor's code and work nothing out.
 */

function cornersOf(sheet: string, address: string): Corners {
  const [first = "", last = first] = address.split(":");
  const place = (text: string) => {
    const [, column = "A", row = "1"] = /^\$?([A-Z])\$?(\d+)$/.exec(text) ?? [];
    return { row: Number(row) - 1, column: column.charCodeAt(0) - 65 };
  };
  const [from, to] = [place(first), place(last)];
  return { sheet, ...from, rows: to.row - from.row + 1, columns: to.column - from.column + 1 };
}

function addressesIn({ sheet, row, column, rows, columns }: Corners): string[][] {
  const letter = (across: number) => String.fromCharCode(65 + column + across);
  return Array.from({ length: rows }, (_, down) =>
    Array.from({ length: columns }, (_, across) => `${sheet}!${letter(across)}${row + down + 1}`),
  );
}

function typeOf(value: string | number): string {
  if (value === "") return "Empty";
  if (typeof value === "number") return "Double";
  return value.startsWith("#") ? "Error" : "String";
}

function writeInto(store: Store, addresses: string[][], written: (string | number)[][]): void {
  const cells = addresses.flat();
  for (const [at, cell] of written.flat().entries()) {
    if (cell !== "") store.set(cells[at] ?? "", [String(cell), cell]);
  }
}

function rangeOf(store: Store, corners: Corners): object {
  const addresses = addressesIn(corners);
  const held = (at: 0 | 1) => addresses.map((row) => row.map((address) => store.get(address)?.[at] ?? ""));
  const [first = "", last = ""] = [addresses.flat()[0], addresses.flat().at(-1)];
  const { row, column, rows, columns } = corners;
  return {
    load: () => undefined,
    isNullObject: false,
    address: first === last ? first : `${first}:${last.split("!")[1]}`,
    rowIndex: row,
    columnIndex: column,
    rowCount: rows,
    columnCount: columns,
    cellCount: rows * columns,
    format: { font: {} },
    get formulas() {
      return held(0);
    },
    get formulasLocal() {
      return held(0);
    },
    set formulas(written: (string | number)[][]) {
      writeInto(store, addresses, written);
    },
    text: held(1).map((line) => line.map(String)),
    values: held(1),
    valueTypes: held(1).map((line) => line.map(typeOf)),
    getSpillParentOrNullObject: () => ({ isNullObject: true, load: () => undefined }),
    getResizedRange: (down: number, across: number) =>
      rangeOf(store, { ...corners, rows: rows + down, columns: columns + across }),
    getRow: (at: number) => rangeOf(store, { ...corners, row: row + at, rows: 1 }),
  };
}

function sheetOf(store: Store, name: string, guarded: readonly string[]): object {
  const own = [...store.keys()].filter((address) => address.startsWith(`${name}!`));
  const corners = own.map((address) => cornersOf(name, address.slice(name.length + 1)));
  const rows = Math.max(...corners.map(({ row }) => row)) + 1;
  const columns = Math.max(...corners.map(({ column }) => column)) + 1;
  const part = (row: number, column: number, down: number, across: number) =>
    rangeOf(store, { sheet: name, row, column, rows: down, columns: across });
  return {
    load: () => undefined,
    name,
    isNullObject: own.length === 0,
    protection: { protected: guarded.includes(name) },
    getUsedRangeOrNullObject: () => part(0, 0, rows, columns),
    getRangeByIndexes: part,
    getCell: (row: number, column: number) => part(row, column, 1, 1),
    getRange: (address: string) => rangeOf(store, cornersOf(name, address)),
  };
}

function workbookOf(store: Store, guarded: readonly string[], selected: () => string): object {
  const sheet = (name: string) => sheetOf(store, name, guarded);
  return {
    getActiveCell: () => {
      const [name = "", place = ""] = selected().split("!");
      return rangeOf(store, cornersOf(name, place));
    },
    names: { getItemOrNullObject: () => ({ isNullObject: true, load: () => undefined }) },
    worksheets: {
      load: () => undefined,
      items: [...new Set([...store.keys()].map((address) => address.split("!")[0] ?? ""))].map(sheet),
      getItem: sheet,
      getItemOrNullObject: sheet,
    },
  };
}

/** `select(address)` moves the selection; `cells` holds what was written. */
function play(given: FakeCells, guarded: readonly string[]): void {
  const cells: Store = new Map(Object.entries(given));
  let [selected = ""] = cells.keys();
  let heard = () => undefined as undefined;
  const workbook = workbookOf(cells, guarded, () => selected);
  const calculated: string[] = [];
  const application = {
    load: () => undefined,
    decimalSeparator: (window as { decimalSign?: string }).decimalSign ?? ".",
    calculate: (kind: string) => calculated.push(kind),
  };
  const ribbon: Record<string, unknown> = {};
  const completed: string[] = [];
  const context = { sync: async () => undefined, workbook: Object.assign(workbook, { application }) };
  const document = {
    addHandlerAsync: (_: string, handler: () => undefined) => {
      heard = handler;
    },
    removeHandlerAsync: () => undefined,
  };
  const isSetSupported = (_: string, set: string) => Number(set.split(".")[1]) <= 12;
  Object.assign(window, {
    cells,
    select: (address: string) => {
      selected = address;
      heard();
    },
    calculated,
    ribbon,
    completed,
    shownPane: 0,
    OfficeExtension: { Error: class extends Error {} },
    CustomFunctions: { associate: () => undefined },
    Excel: {
      run: (first: unknown, second?: unknown) => ((second ?? first) as (_: unknown) => unknown)(context),
    },
    Office: {
      actions: {
        associate: (name: string, act: unknown) => {
          ribbon[name] = act;
        },
      },
      addin: {
        showAsTaskpane: async () => {
          Object.assign(window, { shownPane: (window as unknown as { shownPane: number }).shownPane + 1 });
        },
      },
      HostType: { Excel: "Excel" },
      EventType: { DocumentSelectionChanged: "documentSelectionChanged" },
      context: { document, requirements: { isSetSupported } },
      onReady: async () => ({ host: "Excel" }),
    },
  });
}

const PARTS = [cornersOf, addressesIn, typeOf, writeInto, rangeOf, sheetOf, workbookOf, play];

/** Opens the page inside a workbook of these cells, some of its sheets protected; the first cell is selected. */
export async function fakeWorkbook(
  page: Page,
  cells: FakeCells,
  guarded: readonly string[] = [],
): Promise<void> {
  const start = `play(${JSON.stringify(cells)}, ${JSON.stringify(guarded)});`;
  const body = `(() => { ${PARTS.map(String).join("\n")}\n${start} })();`;
  await page.route(/office\/office\.js/, (route) => route.fulfill({ contentType: "text/javascript", body }));
}
