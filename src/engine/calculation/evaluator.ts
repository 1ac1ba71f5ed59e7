import { CellValueType, type ICellData, type Injector, type Nullable } from "@univerjs/core";
import {
  AstTreeBuilder,
  BaseReferenceObject,
  type BaseValueObject,
  CELL_INVERTED_INDEX_CACHE,
  ErrorType,
  FORMULA_REF_TO_ARRAY_CACHE,
  IFormulaCurrentConfigService,
  IFormulaRuntimeService,
  IFunctionService,
  Lexer,
  LexerNode,
} from "@univerjs/engine-formula";
import { InvalidValue } from "../../core/refusal";
import { tokensOf } from "../../formula/tokens";
import { meter } from "../budget";
import { UNREADABLE } from "../error-sentences";
import { refusedValue } from "../refused-value";
import { rowsOf } from "../values";
import type { EngineCell, Formula } from "./formula";
import type { Pattern } from "./patterns";
import { piecesOf } from "./pieces";
import { findTextsByPlace } from "./quick-functions";
import { ReadCells } from "./read-cells";
import { RunningSums } from "./running-sums";
import type { TextPlaces } from "./text-places";
import { type Place, Tree } from "./tree";
import type { TreeNode } from "./tree-nodes";

type Row = ICellData[];

/** Told of each cell that a formula reads while it is worked out. */
export type Watch = (sheetId: string, row: number, column: number, cell: EngineCell | undefined) => void;

let watch: Watch | undefined;
let isPatched = false;

/**
 * Lets references read a workbook's cells as they stand. As published, the engine looks in six places for each cell,
 * since it keeps results apart until a calculation is over; here they are written where they belong at once.
 */
function readCellsDirectly(): void {
  if (isPatched) return;
  isPatched = true;
  leaveOutIndex();
  rememberLargeRangesLate();
  BaseReferenceObject.prototype.getCellData = function (row, column) {
    meter.countRead();
    const cell = this.getCurrentActiveSheetData()?.cellData.getValue(row, column) as EngineCell | undefined;
    watch?.(this.getSheetId(), row, column, cell);
    return cell as never;
  };
}

/** Ranges of more cells are remembered once they were asked for twice: most are read by one formula alone. */
const LARGE_RANGE = 2000;
const askedOnce = new Set<string>();

/** Keeps the engine from filling memory with the lists of large ranges that nobody asks for again. */
function rememberLargeRangesLate(): void {
  const cache = FORMULA_REF_TO_ARRAY_CACHE;
  const set = cache.set.bind(cache);
  cache.set = (key, list) => {
    const cells = list.getRowCount() * list.getColumnCount();
    if (cells <= LARGE_RANGE || askedOnce.has(key as string)) set(key, list);
    else askedOnce.add(key as string);
  };
}

/**
 * Turns off the engine's index of what stands in which row: built while cells are compared, it answers for a text
 * that is empty otherwise than the cell itself, so that two formulas alike could differ.
 */
function leaveOutIndex(): void {
  const index = CELL_INVERTED_INDEX_CACHE as unknown as Record<
    "set" | "setContinueBuildingCache",
    () => void
  >;
  index.set = () => undefined;
  index.setContinueBuildingCache = () => undefined;
}

const EMPTY: ICellData = { v: null };

/** A value of the engine as the content of a cell. */
function cellFrom(value: Nullable<BaseValueObject>): ICellData {
  if (!value || value.isNull()) return EMPTY;
  if (value.isError()) {
    const custom = value.getCustomData();
    const v = (value as unknown as { getErrorType(): string }).getErrorType();
    return { v, t: CellValueType.STRING, ...(custom && { custom }) };
  }
  if (value.isLambda()) return { v: ErrorType.CALC, t: CellValueType.STRING };
  const pattern = value.getPattern();
  return { ...plain(value), ...(pattern && { s: { n: { pattern } } }) };
}

function plain(value: BaseValueObject): ICellData {
  const v = value.getValue();
  if (value.isBoolean()) return { v: v ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v, t: value.isNumber() ? CellValueType.NUMBER : CellValueType.STRING };
}

const refused = (sentence: string): Row[] => [[cellFrom(refusedValue(new InvalidValue(sentence)))]];

const VALUE_ERROR: ICellData = { v: ErrorType.VALUE, t: CellValueType.STRING };

function placeOf(
  pattern: Pattern,
  tree: Tree,
  { row, column, sheetId }: Pick<Place, "row" | "column" | "sheetId">,
): Place {
  const at = { row, column, sheetId, offset: row - pattern.row };
  if (!tree.isShared) return at;
  const areas = pattern.areasAt(row);
  return { ...at, areas, numbers: pattern.numbers, read: new ReadCells(areas.length) };
}

const readAt = ({ read }: Place, pattern: Pattern) => read && pattern.shared(read);

/** A tree too deep to be worked out is too deep to be reset as well; its formula has its answer already. */
function resetState(tree: Tree): void {
  try {
    tree.reset();
  } catch {
    // Nothing of it is read again.
  }
}

/** Works out one formula at a time from the cells as they stand. */
export class Evaluator {
  private readonly lexer: Lexer;
  private readonly parser: AstTreeBuilder;
  private readonly runtime: IFormulaRuntimeService;
  private readonly texts: TextPlaces;
  private readonly sums: RunningSums;
  /** What the last formula read of the cells that it names; nothing where that is not known. */
  lastRead: ReadCells | undefined;

  constructor(
    injector: Injector,
    private readonly unit: string,
  ) {
    readCellsDirectly();
    this.lexer = injector.get(Lexer);
    this.parser = injector.get(AstTreeBuilder);
    this.runtime = injector.get(IFormulaRuntimeService);
    this.texts = findTextsByPlace(injector.get(IFunctionService));
    this.sums = new RunningSums(injector.get(IFunctionService));
    this.runtime.reset();
    injector.get(IFormulaCurrentConfigService).loadDataLite();
  }

  /** Forgets what ranges held: cells became others. */
  forgetRanges(): void {
    FORMULA_REF_TO_ARRAY_CACHE.clear();
    askedOnce.clear();
    this.texts.forget();
    this.sums.forget();
  }

  /**
   * The cells that a formula comes to, one or a rectangle. Whatever goes wrong stands in them.
   *
   * @param sheet - Id, rows and columns of the formula's sheet.
   * @param watching - Told of each cell that is read.
   */
  evaluate(
    { pattern, place: { row, column } }: Formula,
    sheet: { readonly id: string; readonly rows: number; readonly columns: number },
    watching: Watch,
  ): readonly (readonly ICellData[])[] {
    this.lastRead = undefined;
    if (pattern.refusal !== undefined) return refused(pattern.refusal);
    const tree = this.treeOf(pattern);
    if (!tree) return refused(UNREADABLE.message);
    meter.beginFormula();
    if (meter.isFull) this.forgetRanges();
    this.runtime.setCurrent(row, column, sheet.rows, sheet.columns, sheet.id, this.unit);
    watch = watching;
    try {
      const place = placeOf(pattern, tree, { row, column, sheetId: sheet.id });
      const value = tree.valueAt(place);
      if (!value) return [[VALUE_ERROR]];
      if (meter.stopped !== undefined) return refused(meter.stopped);
      this.lastRead = readAt(place, pattern);
      return rowsOf(value, cellFrom) ?? [[cellFrom(value as BaseValueObject)]];
    } catch {
      if (meter.stopped !== undefined) return refused(meter.stopped);
      // One exception in a function of the engine must not leave the rest of the workbook blank.
      return [[VALUE_ERROR]];
    } finally {
      watch = undefined;
      resetState(tree);
    }
  }

  private treeOf(pattern: Pattern): Tree | null {
    if (pattern.tree === undefined) pattern.tree = pattern.form?.tree ?? this.made(pattern);
    return pattern.tree;
  }

  private made(pattern: Pattern): Tree | null {
    const root = this.parsed(pattern.text);
    if (root === null) return null;
    const tree = new Tree(root, pattern.form && piecesOf(tokensOf(pattern.text)));
    if (tree.isShared && pattern.form !== undefined) pattern.form.tree = tree;
    return tree;
  }

  private parsed(text: string): TreeNode | null {
    try {
      const tree = this.lexer.treeBuilder(text);
      return tree instanceof LexerNode ? ((this.parser.parse(tree) as TreeNode | undefined) ?? null) : null;
    } catch {
      return null;
    }
  }
}
