import type { ICellData, ICommandInfo, IWorkbookData } from "@univerjs/core";
import { placeOf, SHEET_COLUMNS } from "../../formula/addresses";

/** What a cell holds now, style and all; nothing for one that was emptied. */
export interface EditedCell {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
  readonly data: ICellData | null;
}

const SET_VALUES = "sheet.mutation.set-range-values";
/** With more cells than these the whole workbook is kept anew. */
const MAX_CELLS = 1000;

interface Written {
  readonly subUnitId: string;
  readonly cellValue?: Readonly<Record<number, Readonly<Record<number, unknown>> | null>>;
}

/** The cells that were edited since a moment, as long as nothing but cells was. */
export class EditedCells {
  private readonly sheets = new Map<string, Set<number>>();
  private count = 0;
  private isKnown = false;

  /** True where nothing but these cells differs from what stood at the moment. */
  get areAll(): boolean {
    return this.isKnown && this.count <= MAX_CELLS;
  }

  /** From now on. */
  begin(): void {
    this.sheets.clear();
    this.count = 0;
    this.isKnown = true;
  }

  /** Another workbook stands in the grid, or something else than cells became another. */
  forget(): void {
    this.begin();
    this.isKnown = false;
  }

  /** Takes note of an edit. */
  note({ id, params }: Pick<ICommandInfo, "id" | "params">): void {
    if (id !== SET_VALUES) this.forget();
    if (!this.areAll) return;
    const { subUnitId, cellValue = {} } = params as Written;
    const places = this.placesOn(subUnitId);
    const before = places.size;
    for (const [row, cells] of Object.entries(cellValue))
      for (const column of Object.keys(cells ?? {})) places.add(placeOf(Number(row), Number(column)));
    this.count += places.size - before;
  }

  /** @param dataAt - What the grid holds in a cell. */
  cells(dataAt: (sheetId: string, row: number, column: number) => ICellData | null): EditedCell[] {
    return [...this.sheets].flatMap(([sheetId, places]) =>
      [...places].map((place): EditedCell => {
        const [row, column] = [Math.floor(place / SHEET_COLUMNS), place % SHEET_COLUMNS];
        return { sheetId, row, column, data: dataAt(sheetId, row, column) };
      }),
    );
  }

  private placesOn(sheetId: string): Set<number> {
    const known = this.sheets.get(sheetId);
    if (known !== undefined) return known;
    const made = new Set<number>();
    this.sheets.set(sheetId, made);
    return made;
  }
}

/** A workbook as it was kept, with the cells that were edited since. */
export function withCells(snapshot: IWorkbookData, cells: readonly EditedCell[]): IWorkbookData {
  for (const { sheetId, row, column, data } of cells) {
    const rows = snapshot.sheets[sheetId]?.cellData;
    if (rows === undefined) continue;
    rows[row] ??= {};
    const inRow = rows[row] as Record<number, ICellData>;
    if (data === null) delete inRow[column];
    else inRow[column] = data;
  }
  return snapshot;
}
