import fc from "fast-check";
import { beforeAll, describe, expect, inject, test } from "vitest";
import { Refusal } from "../../src/core/refusal";
import { catalogue } from "../../src/functions/catalogue";
import type { WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";
import { launch } from "../browser";
import { CODES, Dispatcher, type Outcome } from "../host/dispatcher";
import { openPane } from "../pane/open-pane";
import { serveFolder } from "../pane/static-server";
import { callOf } from "./arguments";

/*
 * One question, three places: the sources in Node, the built bundle behind the vendor's dispatcher, and
 * the built page in Chromium. The two in Node must agree to the last bit and word. The language leaves the last bits of a
 * power to the engine, and a sum of forty thousand powers differed by 4e-12 of itself between two of them.
 */

const CALLS = 25;
const SEED = Number(process.env.FAST_CHECK_SEED ?? 20261126);

/** Slow enough that a few questions must do. */
const SLOW = new Set(["SECTION_FIT", "SECTION_QUENCH", "SECTION_PROFILE", "STARTS_BY_PROFIT", "CUT_PLAN"]);

interface Call {
  readonly id: string;
  readonly args: readonly unknown[];
}

/** Whether a value travels as it is: JSON has no NaN, and objects stand for Excel's own kinds of cell. */
function travels(given: unknown): boolean {
  if (Array.isArray(given)) return given.every(travels);
  if (typeof given === "number") return Number.isFinite(given) && !Object.is(given, -0);
  return given === null || typeof given === "string" || typeof given === "boolean";
}

/** Excel sends every argument as rows of cells, and one left out as null. */
function asSent(given: unknown): unknown {
  if (given === undefined || given === null) return null;
  if (!Array.isArray(given)) return [[given]];
  return given.map((row: unknown) => (Array.isArray(row) ? row : [row]));
}

function callsOf(fn: WorksheetFunction): Call[] {
  const numRuns = SLOW.has(fn.name) ? 4 : CALLS;
  const worked = examplesOf(fn).map(({ given }) => [...given]);
  return [...worked, ...fc.sample(callOf(fn), { numRuns, seed: SEED })]
    .map((given) => given.map(asSent))
    .filter((args) => args.every(travels))
    .map((args) => ({ id: fn.name, args }));
}

const calls = catalogue.flatMap(callsOf);

/** A figure with every bit, a text in quotes, an error as its code and sentence. */
const written = (cell: unknown) => JSON.stringify(cell);

function inNode({ id, args }: Call): string {
  const fn = catalogue.find(({ name }) => name === id) as WorksheetFunction;
  const rows = evaluate(fn, args).map((row) =>
    row.map((cell) => written(cell instanceof Refusal ? `${cell.code} ${cell.message}` : (cell ?? ""))),
  );
  return rows.join("; ");
}

function fromDispatcher({ ok, value, code = -1 }: Outcome): string {
  if (!ok) return written(`${CODES[code]} ${value}`);
  const rows = (value as unknown[][]).map((row) =>
    row.map((cell) => {
      if (cell === null || typeof cell !== "object") return written(cell);
      const { basicValue, message } = cell as { basicValue: string; message: string };
      return written(`${basicValue} ${message}`);
    }),
  );
  return rows.join("; ");
}

/**
 * What the page does with the calls; a text, because it runs there. Outside Excel nobody has loaded the
 * host's class of errors, so the refusals come back as they are.
 */
const IN_PAGE = `(calls) => {
  // A call that takes long is a promise.
  const shown = (cell) => JSON.stringify(typeof cell === "object" ? cell.code + " " + cell.message : cell);
  return Promise.all(calls.map(async ({ id, args }) => {
    try { return (await CustomFunctions._association.mappings[id](...args)).map((row) => row.map(shown)).join("; "); }
    catch (refusal) { return shown(refusal); }
  }));
}`;

async function inChromium(): Promise<string[]> {
  const served = await serveFolder(inject("pages"));
  const browser = await launch();
  try {
    const { page } = await openPane(browser, { served });
    return await page.evaluate(`(${IN_PAGE})(${JSON.stringify(calls)})`);
  } finally {
    await browser.close();
    served.close();
  }
}

const POWERS = 1e-10;

const FIGURE = /-?\d+(?:\.\d+)?(?:e[+-]?\d+)?/g;

/** Alike but for the last digits of figures. */
function isNear(one: string, other: string): boolean {
  if (one === other) return true;
  if (one.replace(FIGURE, "#") !== other.replace(FIGURE, "#")) return false;
  const figures = (text: string) => (text.match(FIGURE) ?? []).map(Number);
  const others = figures(other);
  return figures(one).every((figure, at) => {
    const difference = Math.abs(figure - (others[at] as number));
    return difference <= POWERS * Math.abs(figure);
  });
}

function differing(answers: readonly string[], agrees: (one: string, other: string) => boolean): string[] {
  return calls.flatMap((call, at) => {
    const [here, there] = [node[at] as string, answers[at] as string];
    return agrees(here, there) ? [] : [`${JSON.stringify(call)}: ${here} became ${there}`];
  });
}

let node: string[];

beforeAll(() => {
  node = calls.map(inNode);
});

describe("the same question has the same answer", () => {
  test("of every function, among them answers and refusals", () => {
    expect(new Set(calls.map(({ id }) => id)).size).toBe(catalogue.length);
    const refused = node.filter((one) => one.includes('"#')).length;
    console.log(`${calls.length} questions, ${refused} of them with a refusal`);
    expect(refused).toBeGreaterThan(calls.length / 4);
    expect(calls.length - refused).toBeGreaterThan(calls.length / 4);
  });

  test("in Chromium, from the built page", async () => {
    const answers = await inChromium();
    const exact = answers.filter((one, at) => one === node[at]).length;
    console.log(`${exact} of ${calls.length} answers to the last bit`);
    expect(differing(answers, isNear)).toEqual([]);
    expect(exact).toBeGreaterThan(0.99 * calls.length);
  });

  test("behind the vendor's dispatcher, from the built bundle", async () => {
    const outcomes = await new Dispatcher(inject("pages")).call(calls);
    expect(differing(outcomes.map(fromDispatcher), Object.is)).toEqual([]);
  });
});
