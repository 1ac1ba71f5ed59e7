import { placeOf, readCellName } from "../formula/addresses";
import { type Expression, parseFormula } from "../formula/parse";
import { readReference } from "../formula/references";
import type { WorksheetFunction } from "../functions/declare";
import { evaluate } from "../functions/evaluate";
import { NAMESPACE } from "../functions/namespace";
import type { CellInput, CellValue } from "./cell-value";
import { constant } from "./plain-call";
import type { SheetInput } from "./workbook-input";

/** What a cell holds that needs no calculation; `undefined` where a formula may fill it, or holds it. */
type Constants = (sheet: string, row: number, column: number) => number | string | boolean | undefined;

function constantsOf(sheets: readonly SheetInput[]): Constants {
  const rowsOf = new Map(sheets.map(({ name, rows }) => [name, rows]));
  return (sheet, row, column) => {
    const content = rowsOf.get(sheet)?.[row]?.[column];
    return content !== undefined && "value" in content ? content.value : undefined;
  };
}

function argument(part: Expression, sheet: string, constants: Constants): unknown {
  if (part.kind !== "reference") return constant(part);
  const reference = readReference(part.text);
  const cell = reference?.kind === "cells" ? readCellName(reference.place) : undefined;
  return cell && constants(reference?.sheet ?? sheet, cell.row, cell.column);
}

/** The one value of a call of ours with constants and single cells that hold some; `undefined` for anything else. */
function ownValue(
  formula: string,
  sheet: string,
  constants: Constants,
  ours: ReadonlyMap<string, WorksheetFunction>,
): CellValue | undefined {
  if (!formula.startsWith(`=${NAMESPACE}.`)) return undefined;
  const call = parseFormula(formula);
  if (call?.kind !== "call") return undefined;
  const fn = ours.get(call.name.slice(NAMESPACE.length + 1));
  if (fn?.shape !== "scalar") return undefined;
  const given = call.given.map((part) => argument(part, sheet, constants));
  if (given.includes(undefined)) return undefined;
  const [row = [], ...more] = evaluate(fn, given);
  const [value] = row;
  const isOne = more.length === 0 && row.length === 1;
  return isOne && (typeof value === "number" || typeof value === "string") ? { value } : undefined;
}

/** A sheet with the values of such cells in place of their formulas, and these values by place. */
export interface OwnCells {
  readonly sheet: SheetInput;
  readonly values: ReadonlyMap<number, CellValue>;
}

/**
 * Answers the cells that hold nothing but a call of one of our functions on constants, so that they need not pass
 * through the engine. An error is left to the engine: a cell that holds one as a constant would be no error to it.
 */
export function ownCells(
  sheets: readonly SheetInput[],
  functions: readonly WorksheetFunction[],
): readonly OwnCells[] {
  const constants = constantsOf(sheets);
  const ours = new Map(functions.map((fn) => [fn.name, fn]));
  return sheets.map((sheet) => {
    const values = new Map<number, CellValue>();
    const rows = sheet.rows.map((row, r) =>
      row.map((content, c): CellInput | undefined => {
        const isFormula = content !== undefined && "formula" in content;
        const value = isFormula ? ownValue(content.formula, sheet.name, constants, ours) : undefined;
        if (value !== undefined) values.set(placeOf(r, c), value);
        return value ?? content;
      }),
    );
    return { sheet: { ...sheet, rows }, values };
  });
}
