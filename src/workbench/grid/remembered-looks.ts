import type { Nullable, ObjectMatrix } from "@univerjs/core";

/**
 * What cells look like, asked once until they change. As published the grid asks for it before every drawing and in
 * every part of it, and each time a dozen interceptors answer: lists, colours, number formats, curves.
 */

/** What cells of a sheet look like, kept from one drawing to the next. */
export interface Looks {
  readonly worksheet: { getCell?: GetCell };
  readonly rowHeightAccumulation: ArrayLike<number>;
  readonly rowHeaderWidthAndMarginLeft: number;
  readonly columnHeaderHeightAndMarginTop: number;
  readonly _stylesCache: {
    readonly background: Readonly<Record<string, ObjectMatrix<unknown>>>;
    readonly backgroundPositions: ObjectMatrix<unknown>;
    readonly fontMatrix: ObjectMatrix<unknown>;
    readonly border: ObjectMatrix<unknown>;
  };
  readonly _handleBgMatrix: ObjectMatrix<unknown>;
  readonly _handleBorderMatrix: ObjectMatrix<unknown>;
  readonly _overflowCache: ObjectMatrix<unknown>;
  getCellWithCoordByIndex(row: number, column: number, withHeader?: boolean): unknown;
  _resetCache(): void;
  resetRangeCache(ranges: unknown): void;
  _setStylesCacheForOneCell(row: number, column: number, options?: Asked): void;
}

/** What is asked of one cell: its letters alone, or its ground and borders too. */
interface Asked {
  readonly cacheItem?: { readonly bg: boolean };
  readonly mergeRange?: unknown;
}

type GetCell = (row: number, column: number) => Nullable<object>;

/** How far the looks of a cell are known, and what its interceptors made of it where that was asked. */
interface Known {
  /** 1 where only its letters are, 2 where all is. */
  looks: 0 | 1 | 2;
  cell?: Nullable<object>;
}

type Rows = Map<number, Map<number, Known>>;

const known = new WeakMap<Looks, Rows>();

function knownCell(looks: Looks, row: number, column: number): Known {
  const rows = held(known, looks, (): Rows => new Map());
  const cells = held(rows, row, () => new Map<number, Known>());
  return held(cells, column, (): Known => ({ looks: 0 }));
}

/** What a map holds under a key; made where there is nothing yet. */
function held<K extends object | number, V>(
  map: { get(key: K): V | undefined; set(key: K, value: V): unknown },
  key: K,
  make: () => V,
): V {
  const found = map.get(key);
  if (found !== undefined) return found;
  const made = make();
  map.set(key, made);
  return made;
}

/** True where the looks of a cell were asked before; otherwise they are from now on. */
function isKnown(looks: Looks, row: number, column: number, isWhole: boolean): boolean {
  const cell = knownCell(looks, row, column);
  const wanted = isWhole ? 2 : 1;
  const before = cell.looks;
  if (before < wanted) cell.looks = wanted;
  return before >= wanted;
}

/** Has every sheet remember, from now on. */
export function rememberLooks(looks: Looks): void {
  const { _setStylesCacheForOneCell: ask, _resetCache: reset, resetRangeCache: resetRanges } = looks;
  looks._setStylesCacheForOneCell = function (row, column, options) {
    if (options?.mergeRange === undefined && isKnown(this, row, column, options?.cacheItem?.bg ?? true))
      return;
    ask.call(this, row, column, options);
  };
  looks._resetCache = function () {
    if (this === kept) return;
    forgetAll(this);
    reset.call(this);
  };
  looks.resetRangeCache = function (ranges) {
    forgetAll(this);
    resetRanges.call(this, ranges);
  };
}

export function forgetAll(looks: Looks): void {
  if (looks !== kept) known.delete(looks);
}

/** The sheet whose cells keep their looks for the time being. */
let kept: Looks | undefined;

/**
 * Does something that makes rows higher or lower and changes no cell otherwise: where published, every cell in sight
 * is asked anew what it looks like.
 *
 * @param rows - What to forget all the same: texts are cut off or not by the height of their row.
 */
export function keepingLooks(looks: Looks, rows: Iterable<number>, work: () => void): void {
  kept = looks;
  try {
    work();
  } finally {
    kept = undefined;
  }
  forgetRows(looks, rows);
  const { backgroundPositions: places } = looks._stylesCache;
  places.forValue((row, column) => {
    places.setValue(row, column, looks.getCellWithCoordByIndex(row, column, false));
  });
}

export function forgetRows(looks: Looks, rows: Iterable<number>): void {
  const { background, backgroundPositions, fontMatrix, border } = looks._stylesCache;
  const grounds = [...Object.values(background), backgroundPositions, looks._handleBgMatrix];
  const lines = [border, looks._handleBorderMatrix];
  for (const row of rows) {
    for (const matrix of [...grounds, ...lines, fontMatrix, looks._overflowCache])
      delete (matrix.getMatrix() as Record<number, unknown>)[row];
    known.get(looks)?.delete(row);
  }
}

/** Does something during which cells are asked for once. Nothing may change meanwhile. */
export function fromMemory<T>(looks: Looks, work: () => T): T {
  const { worksheet } = looks;
  const getCell = worksheet.getCell?.bind(worksheet);
  if (getCell === undefined) return work();
  // Its own method, which stands in the prototype, for the time of the work.
  worksheet.getCell = (row, column) => {
    const remembered = knownCell(looks, row, column);
    if (remembered.cell === undefined) remembered.cell = getCell(row, column) ?? null;
    return remembered.cell;
  };
  try {
    return work();
  } finally {
    delete worksheet.getCell;
  }
}
