import { InvalidValue, Refusal } from "../../core/refusal";
import { ownName } from "../../formula/functions-called";
import { type Expression, partsOf } from "../../formula/parse";
import { functionNamed } from "../../functions/catalogue";
import { type Cell, type Cells, toCells } from "../../functions/cells";
import type { WorksheetFunction } from "../../functions/declare";
import { evaluate } from "../../functions/evaluate";
import type { HostRows } from "../../host/port";

/** Values of the references of a formula by their text; `null` for those that could not be read. */
export type Known = ReadonlyMap<string, HostRows | null>;

/** A call of one of our functions in a formula. */
export interface OwnCall {
  readonly fn: WorksheetFunction;
  readonly given: readonly Expression[];
  readonly text: string;
  /** True where the formula is nothing but this call. */
  readonly isWhole: boolean;
}

/** The function of ours that a name with namespace means. */
function ownFunction(name: string): WorksheetFunction | undefined {
  return functionNamed(ownName(name) ?? "");
}

/** Calls of our functions, the outer before those inside it. */
export function ownCalls(expression: Expression, isWhole = true): OwnCall[] {
  const inner = partsOf(expression).flatMap((part) => ownCalls(part, false));
  const fn = expression.kind === "call" ? ownFunction(expression.name) : undefined;
  if (expression.kind !== "call" || fn === undefined) return inner;
  const { given, text } = expression;
  return [{ fn, given, text, isWhole }, ...inner];
}

/** References in a formula, each once. */
export function referencesIn(expression: Expression): string[] {
  const own = expression.kind === "reference" ? [expression.text] : [];
  return [...new Set([...own, ...partsOf(expression).flatMap(referencesIn)])];
}

const divided = (a: number, b: number) =>
  b === 0 ? new InvalidValue("a number is divided by zero or by an empty cell") : a / b;

const RECKON: Readonly<Partial<Record<string, (a: number, b: number) => Cell>>> = {
  "+": (a, b) => a + b,
  "-": (a, b) => a - b,
  "*": (a, b) => a * b,
  "/": divided,
  "^": (a, b) => a ** b,
  "%": (a) => a / 100,
  sign: (a) => -a,
};

function toNumber(cell: Cell): number {
  if (typeof cell === "string") return cell.trim() === "" ? Number.NaN : Number(cell);
  return Number(cell ?? 0);
}

function reckon(operator: string, a: Cell, b: Cell): Cell {
  if (a instanceof Refusal) return a;
  if (b instanceof Refusal) return b;
  if (operator === "&") return `${a ?? ""}${b ?? ""}`;
  const [left, right] = [toNumber(a), toNumber(b)];
  if (Number.isNaN(left) || Number.isNaN(right))
    return new InvalidValue(`"${Number.isNaN(left) ? a : b}" is a text where a number belongs`);
  return RECKON[operator]?.(left, right) ?? new InvalidValue("the formula cannot be worked out here");
}

const isOne = (cells: Cells) => cells.length === 1 && cells[0]?.length === 1;

/** Cell by cell, where both sides are of one size or one of them is a single cell. */
function combined(operator: string, a: Cells, b: Cells): Cells | null {
  const isSame = a.length === b.length && a[0]?.length === b[0]?.length;
  if (!isSame && !isOne(a) && !isOne(b)) return null;
  const shape = isOne(a) ? b : a;
  const at = (cells: Cells, row: number, column: number) =>
    (isOne(cells) ? cells[0]?.[0] : cells[row]?.[column]) ?? null;
  return shape.map((cells, row) =>
    cells.map((_, column) => reckon(operator, at(a, row, column), at(b, row, column))),
  );
}

function operation(operator: string, given: readonly Expression[], known: Known): Cells | null {
  const [a, b = [[0]]] = given.map((part) => cellsOf(part, known));
  const isReckoned = operator === "&" || RECKON[operator] !== undefined;
  if (!isReckoned || a === undefined || a === null || b === null) return null;
  return combined(operator, a, b);
}

function arrayValue(rows: readonly (readonly Expression[])[], known: Known): Cells {
  return rows.map((row) => row.map((part) => cellsOf(part, known)?.[0]?.[0] ?? null));
}

/**
 * What a part of a formula comes to, as far as it can be known outside the sheet: constants, what cells hold,
 * arithmetic with them and our own functions.
 *
 * @returns `null` where only the sheet knows it: another function, or a reference that was not read.
 */
export function cellsOf(expression: Expression, known: Known): Cells | null {
  switch (expression.kind) {
    case "constant":
      return [[expression.value]];
    case "nothing":
      return [[null]];
    case "error":
      return toCells({ type: "Error", basicValue: expression.text });
    case "reference": {
      const rows = known.get(expression.text) ?? null;
      return rows === null ? null : toCells(rows);
    }
    case "array":
      return arrayValue(expression.rows, known);
    case "operation":
      return operation(expression.operator, expression.given, known);
    case "call": {
      const fn = ownFunction(expression.name);
      return fn === undefined ? null : answerOf(fn, expression.given, known);
    }
  }
}

/** Answers given lately: a grid reports many small changes, and some functions take half a second. */
const KEPT = 12;
const answers = new Map<string, Cells>();

function keyOf(name: string, values: readonly unknown[]): string {
  return `${name} ${JSON.stringify(values, (_, value) => (value instanceof Refusal ? value.message : value))}`;
}

/** The answer of one of our functions, worked out as the sheet does; `null` where an argument is not known. */
export function answerOf(fn: WorksheetFunction, given: readonly Expression[], known: Known): Cells | null {
  const values = given.map((part) => cellsOf(part, known));
  if (values.includes(null)) return null;
  const key = keyOf(fn.name, values);
  const answer = answers.get(key) ?? evaluate(fn, values);
  answers.delete(key);
  answers.set(key, answer);
  const [oldest = ""] = answers.keys();
  if (answers.size > KEPT) answers.delete(oldest);
  return answer;
}
