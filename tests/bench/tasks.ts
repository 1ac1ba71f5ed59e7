import { catalogue, functionNamed } from "../../src/functions/catalogue";
import type { WorksheetFunction } from "../../src/functions/declare";
import { evaluateInParts } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";
import { extremeCalls } from "./extremes";
import type { BenchLine } from "./line";

const ROWS = 1000;
const SLICE_MS = 50;
const BUDGET = 200;
const SHOWN = 12;

/** A figure a little different in each row; whole ones and words stay. */
const inRow = (cell: unknown, row: number) =>
  typeof cell === "number" && cell % 1 !== 0 ? cell * (1 + row / 1e6) : cell;

const rowsOf = (given: readonly unknown[]): readonly unknown[][] =>
  given.map((row) => (Array.isArray(row) ? row : [row]));

/** A list or a table of a worked case with its rows in turn, as many as are asked for; headings stay the first row. */
function repeated(given: readonly unknown[], hasHeadings: boolean): unknown[][] {
  const rows = rowsOf(given);
  const [head, body] = hasHeadings ? [rows.slice(0, 1), rows.slice(1)] : [[], rows];
  const more = Array.from({ length: ROWS }, (_, at) =>
    (body[at % body.length] ?? []).map((cell) => inRow(cell, at)),
  );
  return [...head, ...more];
}

/** Arguments of a worked case, its single values down a column, its lists and tables made long. */
function columns(fn: WorksheetFunction): unknown[] {
  const parameters = Object.values(fn.parameters);
  return (examplesOf(fn)[0]?.given ?? []).map((given, at) => {
    const takes = parameters[at]?.takes;
    if (given === null) return given;
    if (fn.shape === "table" && Array.isArray(given) && given.length > 1)
      return repeated(given, takes === "table");
    if (typeof given === "object" || takes !== "cell" || fn.shape === "table") return given;
    return Array.from({ length: ROWS }, (_, row) => [inRow(given, row)]);
  });
}

/** Processor time of the longest stretch without a pause, ms, as the host runs it. */
function longest(fn: WorksheetFunction, given: readonly unknown[]): number {
  const parts = evaluateInParts(fn, given);
  let most = 0;
  for (let isDone = false; !isDone; ) {
    const end = performance.now() + SLICE_MS;
    const before = process.cpuUsage();
    do isDone = parts.next().done === true;
    while (!isDone && performance.now() < end);
    const { user, system } = process.cpuUsage(before);
    most = Math.max(most, (user + system) / 1000);
  }
  return most;
}

/** The longest task of the calls at the ends of what functions accept. */
function atExtremes(): BenchLine[] {
  return extremeCalls(1.3).map(({ name, what, given }) => {
    const fn = functionNamed(name);
    if (fn === undefined) throw new Error(`no function ${name}`);
    return {
      what: `${name}, ${what}, longest task`,
      value: longest(fn, given),
      unit: "ms",
      budget: BUDGET,
    };
  });
}

/** The longest task of every function at 1,000 rows, the longest first, then those at the extremes. */
export function tasks(): BenchLine[] {
  const all = catalogue
    .filter((fn) => examplesOf(fn).length > 0)
    .map((fn) => ({ name: fn.name, value: longest(fn, columns(fn)) }))
    .sort((one, other) => other.value - one.value);
  const shown = all.slice(0, SHOWN).map(({ name, value }) => ({
    what: `${name}, longest task at ${ROWS} rows`,
    value,
    unit: "ms",
    budget: BUDGET,
  }));
  return [...shown, ...atExtremes()];
}
