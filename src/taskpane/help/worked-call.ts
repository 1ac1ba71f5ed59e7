import { quantityText } from "../../core/quantity-text";
import { Refusal } from "../../core/refusal";
import { functionNamed } from "../../functions/catalogue";
import type { Cell, Cells } from "../../functions/cells";
import type { Column, ExampleArgument, WorksheetFunction } from "../../functions/declare";
import { evaluate } from "../../functions/evaluate";
import { formulaOf } from "../parts/formula";
import { code, escaped, table } from "./html";

function declared(name: string): WorksheetFunction {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`no function is called ${name}`);
  return fn;
}

/** What a function answers while the pages are made. A refusal in a guide is a fault of the guide. */
export function answerOf(name: string, given: readonly ExampleArgument[]): Cells {
  const rows = evaluate(declared(name), given);
  const refused = rows.flat().find((cell) => cell instanceof Refusal);
  if (refused instanceof Refusal) throw new Error(`${name}: ${refused.message}`);
  return rows;
}

function shown(cell: Cell, column: Column | undefined): string {
  if (typeof cell !== "number") return escaped(String(cell ?? ""));
  const unit = column?.unit ?? "";
  return escaped(unit === "°C" ? quantityText(cell, unit) : String(Number(cell.toPrecision(5))));
}

/** A formula with its answer worked out now; a single row of many columns reads downwards. */
export function workedCall(name: string, given: readonly ExampleArgument[]): string {
  const fn = declared(name);
  const columns = fn.shape === "scalar" ? [fn.result] : fn.result;
  const heads = columns.map(({ label, unit }) =>
    unit === "text" || unit === "" || unit === "°C" ? label : `${label} [${unit}]`,
  );
  const rows = answerOf(name, given).map((row) => row.map((cell, at) => shown(cell, columns[at])));
  const [first = []] = rows;
  const isDown = rows.length === 1 && first.length > 1;
  const answer = isDown
    ? table(
        `${name} gives`,
        ["column", "answer"],
        first.map((cell, at) => [escaped(heads[at] ?? ""), cell]),
      )
    : table(`${name} gives`, heads, rows);
  return `<p class="call">${code(formulaOf(fn, given))}</p>\n${answer}`;
}
