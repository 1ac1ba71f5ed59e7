import type { Injector } from "@univerjs/core";
import {
  AstTreeBuilder,
  type BaseReferenceObject,
  type BaseValueObject,
  type ErrorType,
  type FunctionVariantType,
  IFormulaCurrentConfigService,
  IFormulaRuntimeService,
  IFunctionService,
  Interpreter,
  Lexer,
  LexerNode,
} from "@univerjs/engine-formula";
import { catalogue } from "../functions/catalogue";
import type { WorksheetFunction } from "../functions/declare";
import type { CellValue } from "./cell-value";
import { errorSentence, UNREADABLE } from "./error-sentences";
import { startEngine } from "./headless";

import { unquotedGrade } from "./unquoted-grade";
import { cellResults } from "./values";

/** The answer to one formula: a rectangle of cells, one cell where it does not spill. */
export interface Evaluation {
  readonly formula: string;
  readonly rows: readonly (readonly CellValue[])[];
}

const UNIT = "formulas";
const SHEET = "sheet";
/** As large as Excel's own sheet, so that whole columns and far cells may be named. */
const ROWS = 1_048_576;
const COLUMNS = 16_384;

/** Reads and runs formulas one by one, each as if it stood alone on an empty sheet. */
class Evaluator {
  private readonly lexer: Lexer;
  private readonly parser: AstTreeBuilder;
  private readonly interpreter: Interpreter;
  private readonly runtime: IFormulaRuntimeService;
  private readonly names: ReadonlySet<string>;

  constructor(injector: Injector) {
    this.lexer = injector.get(Lexer);
    this.parser = injector.get(AstTreeBuilder);
    this.interpreter = injector.get(Interpreter);
    this.runtime = injector.get(IFormulaRuntimeService);
    this.names = new Set([...injector.get(IFunctionService).getExecutors().keys()].map(String));
    this.runtime.reset();
    injector.get(IFormulaCurrentConfigService).loadDataLite();
  }

  /** Answers one formula; whatever goes wrong stands in the answer. */
  async evaluate(formula: string): Promise<Evaluation> {
    const text = formula.trim();
    if (text === "") return { formula, rows: [[{ value: "" }]] };
    const rows = await this.rowsOf(text.startsWith("=") ? text : `=${text}`);
    const unquoted = unquotedGrade(text, rows);
    if (unquoted !== undefined) return { formula, rows: [[unquoted]] };
    return { formula, rows: rows.map((row) => row.map((cell) => this.explained(cell, text))) };
  }

  private async rowsOf(formula: string): Promise<readonly (readonly CellValue[])[]> {
    try {
      const value = await this.run(formula);
      return value === undefined ? [[UNREADABLE]] : cellResults(value);
    } catch {
      return [[UNREADABLE]];
    }
  }

  private async run(formula: string): Promise<BaseValueObject | BaseReferenceObject | undefined> {
    this.runtime.setCurrent(0, 0, ROWS, COLUMNS, SHEET, UNIT);
    const tree = this.lexer.treeBuilder(formula);
    if (!(tree instanceof LexerNode)) return undefined;
    const node = this.parser.parse(tree);
    if (!node) return undefined;
    const work = { node, refOffsetX: 0, refOffsetY: 0 };
    const value = this.interpreter.checkAsyncNode(node)
      ? await this.interpreter.executeAsync(work)
      : this.interpreter.execute(work);
    return value as FunctionVariantType;
  }

  private explained(cell: CellValue, formula: string): CellValue {
    if (!("error" in cell) || cell.message !== undefined) return cell;
    return { ...cell, message: errorSentence(cell.error as ErrorType, formula, this.names) };
  }
}

/**
 * Evaluates formulas, each on its own: references see an empty sheet and results cannot get in each other's way.
 *
 * @param formulas - As typed in a cell; the leading `=` may be left out. Every function of the engine may be used.
 * @param functions - The worksheet functions to offer.
 * @returns One answer a formula, in the same order. Nothing is thrown for a formula that cannot be read.
 */
export async function evaluateFormulas(
  formulas: readonly string[],
  functions: readonly WorksheetFunction[] = catalogue,
): Promise<Evaluation[]> {
  const sheet = { id: SHEET, name: "Sheet1", rowCount: ROWS, columnCount: COLUMNS };
  const engine = startEngine({ id: UNIT, sheetOrder: [SHEET], sheets: { [SHEET]: sheet } }, functions);
  try {
    const evaluator = new Evaluator(engine.injector);
    const answers: Evaluation[] = [];
    for (const formula of formulas) answers.push(await evaluator.evaluate(formula));
    return answers;
  } finally {
    engine.dispose();
  }
}
