import {
  type ICellData,
  type ICommandInfo,
  type IExecutionOptions,
  type Injector,
  type IRange,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import {
  IRenderManagerService,
  SheetRenderController,
  SheetSkeletonManagerService,
  Spreadsheet,
  SpreadsheetSkeleton,
} from "@univerjs/preset-sheets-core";
import {
  forgetAll,
  forgetRows,
  fromMemory,
  keepingLooks,
  type Looks,
  rememberLooks,
} from "./remembered-looks";

/**
 * Draws anew what a change of values shows, the rows in which it stands, and nothing where it stands on another sheet.
 * As published the grid draws the whole sheet for each value that is typed and once more for its results, and before
 * that it asks six times what each cell in sight looks like.
 */

const SET_VALUES = "sheet.mutation.set-range-values";
const FIT_ROWS = "sheet.mutation.set-worksheet-row-auto-height";
/**
 * What the grid notes of formulas beside the cells that hold them, with every entry that is typed: no cell looks
 * different for it. What formulas fill is drawn with the answer of the calculation.
 */
const NOTES = new Set(["formula.mutation.set-formula-data", "formula.mutation.set-array-formula-data"]);
/** Changed rows with no more unchanged ones between them are drawn as one: each band draws the rows beside it too. */
const MAX_BETWEEN = 2;

interface Bound {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The part of the sheet that is shown in one of the panes between frozen rows and columns. */
interface View {
  readonly cacheBound: Bound;
  readonly isForceDirty: boolean;
  readonly diffX: number;
  readonly diffY: number;
}

interface Context extends CanvasRenderingContext2D {
  translateWithPrecision(x: number, y: number): void;
  clearRectByPrecision(x: number, y: number, width: number, height: number): void;
  rectByPrecision(x: number, y: number, width: number, height: number): void;
}

/** What a pane keeps drawn, and where. */
interface Surface {
  readonly cacheCtx: Context;
  readonly mainCtx: Context;
  readonly topOrigin: number;
  readonly leftOrigin: number;
  readonly bufferEdgeX: number;
  readonly bufferEdgeY: number;
}

interface Picture {
  _refreshIncrementalState: boolean;
  getSkeleton(): Looks | null | undefined;
  isForceDirty(): boolean;
  makeDirty(state?: boolean): unknown;
  draw(context: Context, view: View & { readonly diffBounds: readonly Bound[] }): void;
  render(context: Context, view: View): unknown;
  refreshCacheCanvas(view: View, surface: Surface): void;
}

type Listener = (command: Readonly<ICommandInfo>, options?: IExecutionOptions) => void;

/** What is known of the sheet that is shown. */
interface Skeletons {
  getCurrentParam(): { readonly skeleton: Looks; readonly dirty: boolean } | undefined;
}

interface Controller {
  _commandService: { onCommandExecuted(listener: Listener): unknown };
  readonly _context: { readonly unit: Workbook; readonly unitId: string; readonly mainComponent: Picture };
  readonly _sheetSkeletonManagerService: Skeletons;
  _initCommandListener(): void;
}

interface FittedRows {
  readonly rowsAutoHeightInfo: readonly { readonly row: number }[];
}

interface Values {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly cellValue?: Readonly<Record<number, Readonly<Record<number, ICellData | null>>>>;
}

/** Rows that are to be drawn anew; `"all"` for the whole sheet. */
const stale = new WeakMap<Picture, Set<number> | "all">();
let isRowsOnly = false;

/** Whatever else asks for a drawing gets a whole one. */
function noteStale(picture: Picture): void {
  const { makeDirty } = picture;
  picture.makeDirty = function (state = true) {
    if (!state) stale.delete(this);
    else if (!isRowsOnly) {
      stale.set(this, "all");
      const looks = this.getSkeleton();
      if (looks) forgetAll(looks);
    }
    return makeDirty.call(this, state);
  };
}

/** While it draws, a sheet says what it remembers of its cells: each part of the drawing asks for all of them anew. */
function drawFromMemory(picture: Picture): void {
  const { render } = picture;
  picture.render = function (context, view) {
    const looks = this.getSkeleton();
    const draw = () => render.call(this, context, view);
    return looks ? fromMemory(looks, draw) : draw();
  };
}

function markRows(picture: Picture, rows: Iterable<number>): void {
  const before = stale.get(picture);
  isRowsOnly = true;
  picture.makeDirty();
  isRowsOnly = false;
  if (before !== "all") stale.set(picture, new Set([...(before ?? []), ...rows]));
}

/** Rows close to each other are drawn as one. */
function bandsOf(rows: ReadonlySet<number>): { first: number; last: number }[] {
  const bands: { first: number; last: number }[] = [];
  for (const row of [...rows].sort((a, b) => a - b)) {
    const band = bands.at(-1);
    if (band !== undefined && row <= band.last + 1 + MAX_BETWEEN) band.last = row;
    else bands.push({ first: row, last: row });
  }
  return bands;
}

/** Draws rows into what a pane keeps drawn, in the way in which the grid draws what scrolling brings into sight. */
function drawRows(picture: Picture, looks: Looks, view: View, surface: Surface, rows: ReadonlySet<number>) {
  const { cacheCtx, mainCtx, topOrigin, leftOrigin, bufferEdgeX, bufferEdgeY } = surface;
  const { a, b, c, d, e, f } = mainCtx.getTransform();
  cacheCtx.save();
  cacheCtx.setTransform(a, b, c, d, 0, 0);
  cacheCtx.translateWithPrecision(e / a - leftOrigin + bufferEdgeX, f / d - topOrigin + bufferEdgeY);
  picture._refreshIncrementalState = true;
  for (const band of bandsOf(rows)) drawBand(picture, looks, view, cacheCtx, band);
  picture._refreshIncrementalState = false;
  cacheCtx.restore();
}

function drawBand(
  picture: Picture,
  looks: Looks,
  view: View,
  context: Context,
  { first, last }: { readonly first: number; readonly last: number },
): void {
  const { rowHeightAccumulation: ends, columnHeaderHeightAndMarginTop: head } = looks;
  const { left, right, top, bottom } = view.cacheBound;
  const above = (row: number) => ends[row - 1] ?? 0;
  const lowest = ends[last] ?? ends[ends.length - 1] ?? 0;
  if (lowest + head < top || above(first) + head > bottom) return;
  // Lines between rows belong to the row above or below: those rows are drawn too, and cut off at the line.
  const area = { x: left - looks.rowHeaderWidthAndMarginLeft, y: above(first) - 1, width: right - left };
  const height = lowest - area.y + 2;
  context.save();
  context.clearRectByPrecision(area.x, area.y, area.width, height);
  context.beginPath();
  context.rectByPrecision(area.x, area.y, area.width, height);
  context.closePath();
  context.clip();
  const bound = { left, right, top: above(first - 1) + head, bottom: (ends[last + 1] ?? lowest) + head };
  picture.draw(context, { ...view, diffBounds: [bound] });
  context.restore();
}

function drawStaleRows(picture: Picture): void {
  const { refreshCacheCanvas } = picture;
  picture.refreshCacheCanvas = function (view, surface) {
    const rows = stale.get(this);
    const looks = this.getSkeleton();
    const isMoved = view.diffX !== 0 || view.diffY !== 0;
    const isWhole = rows === undefined || rows === "all" || view.isForceDirty || this.isForceDirty();
    if (isWhole || isMoved || !looks) refreshCacheCanvas.call(this, view, surface);
    else drawRows(this, looks, view, surface, rows);
  };
}

const isStyled = (cells: Readonly<Record<number, ICellData | null>> | undefined) =>
  Object.values(cells ?? {}).some((data) => data?.s !== undefined);

/** Joined cells are drawn as one: a row of them takes the others along. */
function addJoined(rows: Set<number>, joined: readonly IRange[]): void {
  for (const { startRow, endRow } of joined) {
    const inside = Array.from({ length: endRow - startRow + 1 }, (_, at) => startRow + at);
    if (inside.some((row) => rows.has(row))) for (const row of inside) rows.add(row);
  }
}

/** Rows that new values are shown in. A cell whose style is written too may change the lines around it. */
function rowsOf({ cellValue = {} }: Values, joined: readonly IRange[]): Set<number> {
  const rows = new Set<number>();
  for (const [at, cells] of Object.entries(cellValue)) {
    const row = Number(at);
    rows.add(row);
    if (isStyled(cells)) rows.add(Math.max(0, row - 1)).add(row + 1);
  }
  addJoined(rows, joined);
  return rows;
}

/** Draws what a command changed. @returns False where the grid has to do so. */
function isDrawn(
  { _context: context, _sheetSkeletonManagerService: skeletons }: Controller,
  { id, params }: ICommandInfo,
) {
  if (NOTES.has(id)) return true;
  const values = params as Values | undefined;
  if (id !== SET_VALUES || values?.unitId !== context.unitId) return false;
  const sheet = context.unit.getActiveSheet();
  if (sheet && values.subUnitId !== sheet.getSheetId()) return true;
  const rows = rowsOf(values, sheet?.getMergeData() ?? []);
  return areMarked(skeletons, context.mainComponent, rows);
}

const fittedRows = ({ rowsAutoHeightInfo }: FittedRows) =>
  rowsAutoHeightInfo.flatMap(({ row }) => [row - 1, row, row + 1]);

/** Has rows drawn anew. @returns False where the whole sheet waits to be laid out anyway. */
function areMarked(skeletons: Skeletons, picture: Picture, rows: ReadonlySet<number>): boolean {
  const current = skeletons.getCurrentParam();
  if (current === undefined || current.dirty) return false;
  forgetRows(current.skeleton, rows);
  markRows(picture, rows);
  return true;
}

/** Draws the row of a cell anew, of which something else than its value became another. */
export function drawRowOf(
  injector: Injector,
  { unitId, subUnitId, row }: { readonly unitId: string; readonly subUnitId: string; readonly row: number },
): void {
  const instances = injector.get(IUniverInstanceService);
  const workbook = instances.getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
  const render = injector.get(IRenderManagerService).getRenderById(unitId);
  const sheet = workbook?.getActiveSheet();
  if (!render?.mainComponent || sheet?.getSheetId() !== subUnitId) return;
  const rows = new Set([row]);
  addJoined(rows, sheet.getMergeData());
  const picture = render.mainComponent as unknown as Picture;
  const skeletons = render.with(SheetSkeletonManagerService) as unknown as Skeletons;
  if (!areMarked(skeletons, picture, rows)) picture.makeDirty();
}

function followValues(controller: Controller): void {
  const { _initCommandListener: init } = controller;
  controller._initCommandListener = function () {
    const commands = this._commandService;
    const onCommandExecuted = (listener: Listener) =>
      commands.onCommandExecuted((command, options) => {
        if (isDrawn(this, command)) return;
        const draw = () => listener(command, options);
        const looks = this._sheetSkeletonManagerService.getCurrentParam()?.skeleton;
        if (command.id !== FIT_ROWS || looks === undefined) draw();
        else keepingLooks(looks, fittedRows(command.params as FittedRows), draw);
      });
    this._commandService = { onCommandExecuted };
    init.call(this);
    this._commandService = commands;
  };
}

let isChanged = false;

/** Changes how every grid draws that is made from now on. */
export function drawChangedRows(): void {
  if (isChanged) return;
  isChanged = true;
  rememberLooks(SpreadsheetSkeleton.prototype as unknown as Looks);
  drawFromMemory(Spreadsheet.prototype as unknown as Picture);
  noteStale(Spreadsheet.prototype as unknown as Picture);
  drawStaleRows(Spreadsheet.prototype as unknown as Picture);
  followValues(SheetRenderController.prototype as unknown as Controller);
}
