import { CellValueType, type ICellData } from "@univerjs/core";
import { readCellParts } from "../../formula/addresses";
import { type Expression, parseFormula } from "../../formula/parse";
import { readReference } from "../../formula/references";
import { isErrorCode } from "../../formula/tokens";
import type { WorksheetFunction } from "../../functions/declare";
import { evaluate } from "../../functions/evaluate";
import { NAMESPACE } from "../../functions/namespace";
import { constant } from "../plain-call";
import { resultData } from "../workbook-input";

/** An argument: a constant, or the cell that the formula names in this place among its references. */
type Argument = { readonly value: unknown } | { readonly reference: number };

/** A formula that is nothing but a call of one of our functions with constants and single cells. */
export interface OwnCall {
  readonly fn: WorksheetFunction;
  readonly given: readonly Argument[];
}

/** @returns Nothing for any other formula: the engine works those out. */
export function ownCall(text: string, ours: ReadonlyMap<string, WorksheetFunction>): OwnCall | undefined {
  if (!text.startsWith(`=${NAMESPACE}.`)) return undefined;
  const call = parseFormula(text);
  const fn = call?.kind === "call" ? ours.get(call.name.slice(NAMESPACE.length + 1)) : undefined;
  if (call?.kind !== "call" || fn?.shape !== "scalar") return undefined;
  let references = 0;
  const given = call.given.map((part): Argument | undefined => {
    const value = constant(part);
    if (value !== undefined) return { value };
    if (!isOneCell(part)) return undefined;
    references += 1;
    return { reference: references - 1 };
  });
  return given.includes(undefined) ? undefined : { fn, given: given as Argument[] };
}

function isOneCell(part: Expression): boolean {
  if (part.kind !== "reference") return false;
  const reference = readReference(part.text);
  return reference?.kind === "cells" && readCellParts(reference.place) !== undefined;
}

const NO_VALUE = Symbol("an error, or a number kept as a text");

/** What our functions read in a cell. */
function heldIn(cell: ICellData | undefined): unknown {
  const v = cell?.v;
  if (v === undefined || v === null) return null;
  if (cell?.t === CellValueType.BOOLEAN) return v === 1 || v === true;
  return typeof v === "string" && isErrorCode(v) ? NO_VALUE : v;
}

/**
 * What such a call comes to. @param cells - The cells it names, in their order.
 * @returns Nothing where the engine has to answer: an error among the cells, or as the answer, has a sentence there.
 */
export function answer(
  { fn, given }: OwnCall,
  cells: readonly (ICellData | undefined)[],
): ICellData | undefined {
  const values = given.map((one) => ("value" in one ? one.value : heldIn(cells[one.reference])));
  if (values.includes(NO_VALUE)) return undefined;
  const [row = [], ...more] = evaluate(fn, values);
  const [value] = row;
  const isOne = more.length === 0 && row.length === 1;
  return isOne && (typeof value === "number" || typeof value === "string")
    ? resultData({ value })
    : undefined;
}
