import { readFileSync } from "node:fs";
import { describe, expect, inject, test } from "vitest";
import { catalogue } from "../../src/functions/catalogue";
import type { Example, ExampleArgument, WorksheetFunction } from "../../src/functions/declare";
import { examplesOf } from "../../src/functions/examples";
import { TOPICS } from "../../src/functions/topics";
import {
  CANCELABLE,
  CODES,
  Dispatcher,
  ERRORS_ALLOWED,
  type Invocation,
  type Outcome,
  RICH_ALLOWED,
} from "./dispatcher";

const dispatcher = new Dispatcher(inject("pages"));

/** An argument as Excel sends it for a parameter that takes ranges: always rows of cells. */
function asRange(given: ExampleArgument | undefined): unknown {
  if (given === null || given === undefined) return null;
  if (typeof given !== "object") return [[given]];
  return given.map((row: unknown) => (Array.isArray(row) ? row : [row]));
}

function goodArguments(fn: WorksheetFunction, { given }: Pick<Example, "given">): unknown[] {
  return Object.keys(fn.parameters).map((_, position) => asRange(given[position]));
}

/** Each takes about two slices of 50 ms. */
const ROWS = 20;

const rich = (value: object) => [[{ value: JSON.stringify(value) }]];

/** What people and other functions put into cells, in the forms in which it travels. */
const BAD: Readonly<Record<string, unknown>> = {
  "left out": null,
  "empty text": [[""]],
  "empty cell on the web": [[null]],
  "empty cell on Windows": [[0]],
  "text where a number is wanted": [["twelve"]],
  "decimal comma": [["0,8"]],
  "number as text": [["0.8"]],
  negative: [[-1]],
  huge: [[1e300]],
  tiny: [[1e-300]],
  truth: [[true]],
  "text that reads like a value": [["NaN"]],
  "rich error": rich({ type: "Error", basicValue: "#N/A", errorType: "NotAvailable" }),
  "rich error of another kind": rich({ type: "Error", basicValue: "#DIV/0!", errorType: "Div0" }),
  "rich number": rich({ type: "Double", basicValue: 0.8, numberFormat: "0.00" }),
  "rich entity": rich({
    type: "Entity",
    text: "1095",
    basicType: "Error",
    basicValue: "#VALUE!",
    properties: {},
  }),
  "ragged range": [[1, 2, 3], ["1095"], []],
  "no cells": [],
  "one cell": [["1095"]],
  "not in a range": "1095",
};

/** What the metadata asks for: error values and rich values both. */
const BOTH = ERRORS_ALLOWED | RICH_ALLOWED;

const ERROR_OBJECT: Readonly<Record<string, unknown>> = {
  "error object": [[{ code: "#N/A", type: "CustomFunctionError" }]],
};

interface ErrorValue {
  readonly type: string;
  readonly basicValue: string;
  readonly message?: string;
}

/** Why a cell that came back may not stand in a sheet; empty where it may. */
function cellFault(cell: unknown): string {
  if (typeof cell === "number" || typeof cell === "string" || typeof cell === "boolean") return "";
  if (cell === null || typeof cell !== "object") return `${cell} came back`;
  const { type, basicValue, message = "" } = cell as ErrorValue;
  if (type !== "Error" || !Object.values(CODES).includes(basicValue)) return JSON.stringify(cell);
  return sentenceFault(message);
}

function sentenceFault(message: unknown): string {
  if (typeof message !== "string" || message.trim().length < 10) return `no sentence: ${message}`;
  return message.includes("fault in the add-in") ? message : "";
}

function faults({ ok, value, code = -1 }: Outcome): string[] {
  if (!ok) return [code in CODES ? sentenceFault(value) : `code ${code}: ${value}`].filter(Boolean);
  if (!Array.isArray(value)) return [`not a range: ${JSON.stringify(value)}`];
  const widths = new Set(value.map((row: unknown[]) => row.length));
  return [...value.flat().map(cellFault), widths.size === 1 ? "" : "ragged"].filter(Boolean);
}

/** These solve a flow of heat a call: only what they require is spoilt, or the suite would take minutes. */
const SOLVERS = ["SECTION_FIT", "SECTION_PROFILE", "SECTION_QUENCH"];

/** The good arguments of a function with one of them, then all of them, spoilt. */
function spoilt(fn: WorksheetFunction, bad: unknown): unknown[][] {
  const given = goodArguments(fn, examplesOf(fn)[0] ?? { given: [] });
  const required = Object.values(fn.parameters).filter(({ optional }) => !optional).length;
  const good = SOLVERS.includes(fn.name) ? given.slice(0, required) : given;
  const each = good.map((_, place) => good.map((value, at) => (at === place ? bad : value)));
  return [...each, good.map(() => bad)];
}

async function faultsOf(invocations: readonly Invocation[]): Promise<string[]> {
  const outcomes = await dispatcher.call(invocations);
  return outcomes.flatMap((outcome, at) => {
    const call = `${invocations[at]?.id}(${JSON.stringify(invocations[at]?.args)})`;
    return faults(outcome).map((fault) => `${call}: ${fault}`);
  });
}

/** What binary arithmetic adds to a difference of decimal figures. */
const DUST = 1e-9;

function matches(expected: unknown, got: unknown, within: number): boolean {
  if (expected === "…") return typeof got === "string";
  if (typeof expected === "number")
    return typeof got === "number" && Math.abs(got - expected) <= within + DUST;
  return got === expected;
}

describe("the vendor's dispatcher, without document or storage", () => {
  const examples = catalogue.flatMap((fn) => examplesOf(fn).map((example) => ({ fn, example })));

  test("every function has a worked case, and none is left over", () => {
    const files = TOPICS.map((topic) =>
      readFileSync(`src/functions/${topic.toLowerCase()}/examples.ts`, "utf8"),
    );
    const worked = files.flatMap((text) =>
      [...text.matchAll(/^export const (\w+):/gm)].map(([, name]) => name),
    );
    expect(worked.sort()).toEqual(catalogue.map(({ name }) => name).sort());
    // A list of words takes nothing in: there is nothing to work out.
    const asked = catalogue.filter(({ parameters }) => Object.keys(parameters).length > 0);
    expect(asked.filter((fn) => examplesOf(fn).length === 0)).toEqual([]);
  });

  test("every example gives what it says", async () => {
    const outcomes = await dispatcher.call(
      examples.map(({ fn, example }) => ({ id: fn.name, args: goodArguments(fn, example) })),
    );
    const wrong = examples.flatMap(({ fn, example }, at) => {
      const expected: unknown[] = [example.gives].flat(2);
      const got = [outcomes[at]?.value].flat(2);
      const agrees = expected.every((value, place) => matches(value, got[place], example.within ?? 0));
      return agrees && expected.length === got.length ? [] : [`${fn.name}: ${JSON.stringify(got)}`];
    });
    expect(wrong).toEqual([]);
    expect(examples.length).toBeGreaterThan(20);
  });

  test.each(Object.entries(BAD))("%s: a value or a sentence, for every argument", async (_, bad) => {
    const calls = catalogue.flatMap((fn) =>
      spoilt(fn, bad).map((args) => ({ id: fn.name, args, flags: BOTH })),
    );
    expect(await faultsOf(calls)).toEqual([]);
  });

  test.each(Object.entries(ERROR_OBJECT))("%s: a sentence, for every argument", async (_, bad) => {
    const calls = catalogue.flatMap((fn) =>
      spoilt(fn, bad).map((args) => ({ id: fn.name, args, flags: ERRORS_ALLOWED })),
    );
    expect(await faultsOf(calls)).toEqual([]);
  });

  test("one bad row of a column spoils no other", async () => {
    const [outcome] = await dispatcher.call([
      { id: "CARBON", args: [[["1095"], ["no such steel"], ["5160"]], null] },
    ]);
    const rows = outcome?.value as unknown[][];
    // SAE numbering: the last two digits are hundredths of a per cent of carbon.
    expect([rows[0]?.[0], rows[2]?.[0]]).toEqual([0.95, 0.6]);
    expect(rows[1]?.[0]).toMatchObject({ type: "Error", basicValue: "#N/A" });
  });

  test.each([
    [
      "both kinds",
      BOTH,
      { value: JSON.stringify({ type: "Error", basicValue: "#N/A", errorType: "NotAvailable" }) },
    ],
    ["errors alone, as before data types", ERRORS_ALLOWED, { code: "#N/A", type: "CustomFunctionError" }],
  ])("an error in one row of a column spoils no other: %s", async (_, flags, error) => {
    const [outcome] = await dispatcher.call([
      { id: "CARBON", args: [[["1095"], [error], ["5160"]], null], flags },
    ]);
    const rows = outcome?.value as unknown[][];
    expect([rows[0]?.[0], rows[2]?.[0]]).toEqual([0.95, 0.6]);
    expect(rows[1]?.[0]).toMatchObject({ type: "Error", basicValue: "#N/A" });
  });

  test("a word of a list is understood as a single text and in a range", async () => {
    const [family] = Object.values(catalogue.find(({ name }) => name === "STEELS")?.parameters ?? {});
    const calls = [
      { id: "STEELS", args: [family?.words[0], null, null] },
      { id: "SECTION_AREA", args: ["diamond", [[40]], [[6]]] },
      { id: "SECTION_AREA", args: [[["diamond"]], [[40]], [[6]]] },
      { id: "SECTION_AREA", args: [rich({ type: "String", basicValue: "diamond" }), [[40]], [[6]]] },
    ];
    const [steels, ...areas] = await dispatcher.call(calls.map((call) => ({ ...call, flags: BOTH })));
    expect(Array.isArray(steels?.value)).toBe(true);
    // 40 × 6 / 2, a diamond by hand.
    for (const { value } of areas) expect(value).toEqual([[120]]);
  });

  test("a column of long rows comes in slices, as one answer, and a short call beside it too", async () => {
    const widths = Array.from({ length: ROWS }, (_, row) => [30 + row / 100]);
    const outcomes = await dispatcher.call([
      {
        id: "SECTION_QUENCH",
        args: [[["1084"]], widths, [[4]], [[0.7]], [["fast oil"]]],
        flags: BOTH | CANCELABLE,
      },
      { id: "CARBON", args: [[["1095"]], null], flags: BOTH },
    ]);
    const rows = outcomes[0]?.value as unknown[][];
    expect(rows.length).toBe(ROWS);
    expect(rows.flat().map(cellFault).filter(Boolean)).toEqual([]);
    expect(outcomes[1]?.value).toEqual([[0.95]]);
  });

  test("an unknown id fails and nothing else does", async () => {
    const outcomes = await dispatcher.call([
      { id: "NO_SUCH_FUNCTION", args: [] },
      { id: "VERSION", args: [] },
    ]);
    expect(outcomes.map(({ ok }) => ok)).toEqual([false, true]);
  });
});
