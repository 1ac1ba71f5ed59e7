import { readFileSync } from "node:fs";
import { catalogue } from "../../src/functions/catalogue";
import type { AnyParameter, WorksheetFunction } from "../../src/functions/declare";

/** Where the promise stands: what formulas in people's workbooks rely on. */
export const FROZEN_NAMES = "tests/robustness/frozen-names.json";

/** Label, kind, unit, how many cells it takes, and the default: what an argument means. */
function argumentText({ label, kind, unit, takes, optional, fallbackText }: AnyParameter): string {
  const measured = unit === "" ? kind : `${kind} in ${unit}`;
  const cells = takes === "cell" ? "" : `, ${takes}`;
  if (!optional) return `${label}: ${measured}${cells}`;
  return `${label}: ${measured}${cells}, may be left out${fallbackText === "" ? "" : ` (${fallbackText})`}`;
}

function resultText(fn: WorksheetFunction): string {
  const columns = fn.shape === "scalar" ? [fn.result] : fn.result;
  return `gives ${fn.shape}: ${columns.map(({ label, unit }) => (unit === "" ? label : `${label} in ${unit}`)).join("; ")}`;
}

/** Every function with its arguments in order and what it gives, as it stands now. */
export function namesNow(): Record<string, string[]> {
  const all = catalogue.map((fn) => [
    fn.name,
    [...Object.values(fn.parameters).map(argumentText), resultText(fn)],
  ]);
  return Object.fromEntries(all) as Record<string, string[]>;
}

export function frozenNames(): Record<string, string[]> {
  return JSON.parse(readFileSync(FROZEN_NAMES, "utf8")) as Record<string, string[]>;
}
