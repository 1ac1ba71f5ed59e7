import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Evaluation, evaluateFormulas } from "../../src/engine/evaluate-formulas";
import { catalogue, NAMESPACE } from "../../src/functions/catalogue";
import type { WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { callOf } from "./arguments";
import { plain } from "./judge";

const CALLS = 12;
const LONGEST_TEXT = 200;

/** Slow enough to be asked by its worked cases only, which tests/engine does. */
const SLOW = new Set(["SECTION_FIT", "RUN_PLAN", "RUN_TOTALS", "CUT_PLAN", "STEEL_ORDER", "COST_RANGE"]);

/** A cell as a formula writes it; `undefined` where a formula has no way to write it. */
function written(cell: unknown): string | undefined {
  if (cell === null || cell === undefined) return undefined;
  if (typeof cell === "number") return Number.isFinite(cell) ? String(cell) : undefined;
  if (typeof cell !== "string" || cell.length > LONGEST_TEXT) return undefined;
  return /^[ -~°²³äöüéГхХМФС]*$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : undefined;
}

/** An array constant; each row must be as long as the first. */
function writtenRows(rows: readonly unknown[]): string | undefined {
  const cells = rows.map((row) => (Array.isArray(row) ? row : [row]).map(written));
  const width = cells[0]?.length ?? 0;
  const isWhole = width > 0 && cells.every((row) => row.length === width && !row.includes(undefined));
  return isWhole ? `{${cells.map((row) => row.join(",")).join(";")}}` : undefined;
}

/** The call as a formula; `undefined` where one of its arguments cannot be written. */
function formulaOf({ name }: WorksheetFunction, given: readonly unknown[]): string | undefined {
  let end = given.length;
  while (end > 0 && given[end - 1] === undefined) end -= 1;
  const parts = given.slice(0, end).map((one) => {
    if (one === undefined || one === null) return "";
    return Array.isArray(one) ? writtenRows(one) : written(one);
  });
  return parts.includes(undefined) ? undefined : `=${NAMESPACE}.${name}(${parts.join(",")})`;
}

interface Case {
  readonly fn: WorksheetFunction;
  readonly given: readonly unknown[];
  readonly formula: string;
}

function casesOf(fn: WorksheetFunction): Case[] {
  return fc
    .sample(callOf(fn), { numRuns: CALLS, seed: 20261125 })
    .map((given) => ({ fn, given, formula: formulaOf(fn, given) }))
    .filter((one): one is Case => one.formula !== undefined);
}

function shown({ rows }: Evaluation): unknown[][] {
  return rows.map((row) =>
    row.map((cell) => ("error" in cell ? `${cell.error} ${cell.message}` : cell.value)),
  );
}

/** A spreadsheet knows 15 digits; an empty cell counts as 0 in a formula's own result. */
function alike(answer: unknown, other: unknown): boolean {
  if (typeof answer === "number" && typeof other === "number") {
    return Math.abs(answer - other) <= 1e-12 * Math.max(1, Math.abs(answer));
  }
  return answer === other;
}

describe("the formula engine answers as the functions do", async () => {
  const cases = catalogue.filter(({ name }) => !SLOW.has(name)).flatMap(casesOf);
  const evaluations = await evaluateFormulas(cases.map(({ formula }) => formula));

  test(`${cases.length} calls with arguments of every kind`, () => {
    expect(cases.length).toBeGreaterThan(700);
    const differing = cases.flatMap(({ fn, given, formula }, place) => {
      const direct = plain(evaluate(fn, given));
      const engine = shown(evaluations[place] as Evaluation);
      const isSame =
        direct.length === engine.length &&
        direct.every((row, r) => row.every((cell, c) => alike(cell, engine[r]?.[c])));
      return isSame ? [] : [`${formula}\n  ${JSON.stringify(direct)}\n  ${JSON.stringify(engine)}`];
    });
    expect(differing).toEqual([]);
  });
});
