import { catalogue } from "../../src/functions/catalogue";
import type { WorksheetFunction } from "../../src/functions/declare";
import { evaluateInParts } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";
import type { BenchLine } from "./line";

const ROWS = 1000;
const SLICE_MS = 50;
const BUDGET = 200;
const SHOWN = 12;

/** Arguments of a worked case, its single values down a column, each row a little different. */
function columns(fn: WorksheetFunction): unknown[] {
  const parameters = Object.values(fn.parameters);
  return (examplesOf(fn)[0]?.given ?? []).map((given, at) => {
    if (
      given === null ||
      typeof given === "object" ||
      parameters[at]?.takes !== "cell" ||
      fn.shape === "table"
    )
      return given;
    const cell = (row: number) =>
      typeof given === "number" && given % 1 !== 0 ? given * (1 + row / 1e6) : given;
    return Array.from({ length: ROWS }, (_, row) => [cell(row)]);
  });
}

/** Processor time of the longest stretch without a pause, ms, as the host runs it. */
function longest(fn: WorksheetFunction): number {
  const parts = evaluateInParts(fn, columns(fn));
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

/** The longest task of every function at 1,000 rows, the longest first; a table function is asked its worked case. */
export function tasks(): BenchLine[] {
  const all = catalogue
    .filter((fn) => examplesOf(fn).length > 0)
    .map((fn) => ({ name: fn.name, value: longest(fn) }))
    .sort((one, other) => other.value - one.value);
  return all.slice(0, SHOWN).map(({ name, value }) => ({
    what: `${name}, longest task at ${ROWS} rows`,
    value,
    unit: "ms",
    budget: BUDGET,
  }));
}
