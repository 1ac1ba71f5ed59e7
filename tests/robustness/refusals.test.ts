import { describe, expect, test } from "vitest";
import { numberText, quantityText } from "../../src/core/quantity-text";
import { Refusal } from "../../src/core/refusal";
import { catalogue } from "../../src/functions/catalogue";
import type { AnyParameter, WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";
import { across, numericArguments, type OneArgument } from "./one-argument";

const ARGUMENTS = catalogue.flatMap(numericArguments);

function refusalOf({ ask }: OneArgument, value: number | string): Refusal | undefined {
  return ask(value)
    .flat()
    .find((cell) => cell instanceof Refusal);
}

/**
 * The sentence that answers a bad argument: that of a refused cell, or, where only words rest on the argument, the
 * cautions that name it.
 */
function sentenceOn(one: OneArgument, value: number | string): string {
  const { label } = one.parameter;
  const refused = refusalOf(one, value);
  if (refused !== undefined) return refused.message;
  const beginning = `${label}: `.toLowerCase();
  const words = one.ask(value).flat().map(String);
  const said = words.find((cell) => cell.toLowerCase().startsWith(beginning)) ?? "";
  // A caution begins with a capital letter, the label of an argument need not.
  return said === "" ? "" : label + said.slice(label.length);
}

/** A figure as sentences print it: rounded to six digits, temperatures in both scales. */
function prints(message: string, value: number, unit: string): boolean {
  return message.includes(numberText(value)) || message.includes(quantityText(value, unit));
}

/** Steps beyond the ends that no rounding in a sentence hides. */
const BEYOND = 7;
const NO_LIMIT = 9e8;

describe("a figure outside what an argument accepts", () => {
  const cases = ARGUMENTS.flatMap((one) =>
    [one.span.low - BEYOND, one.span.high + BEYOND]
      .filter((value) => Math.abs(value) < NO_LIMIT)
      .map((value) => [`${one.fn.name}, ${one.parameter.label} ${value}`, one, value] as const),
  );

  test.each(cases)("%s: argument, value, limit and unit in the sentence", (_name, one, value) => {
    const { label, unit, kind } = one.parameter;
    const message = sentenceOn(one, value);
    // A requirement such as "58-60" is read as a whole: its sentence names the Rockwell C scale.
    const names = kind === "hardness requirement" ? "Rockwell C" : label;
    expect(message).toContain(names);
    expect(prints(message, value, unit), message).toBe(true);
    expect(message).toContain(unit);
    const { low, high } = one.span;
    expect(prints(message, low, unit) || prints(message, high, unit), message).toBe(true);
  });
});

describe("words where a figure is wanted", () => {
  test.each(ARGUMENTS.map((one) => [`${one.fn.name}, ${one.parameter.label}`, one] as const))(
    "%s: argument and value in the sentence",
    (_name, one) => {
      const { parameter } = one;
      const message = sentenceOn(one, "soon");
      expect(message).toMatch(
        parameter.kind === "hardness requirement" ? /hardness/ : `${parameter.label}: `,
      );
      expect(message).toContain('"soon"');
    },
  );
});

describe("a figure inside what an argument accepts that still has no answer", () => {
  /** A figure, or the argument that is missing beside the one given. */
  const SOME_FIGURE = /\d|needs its|needs the|needs both|no pieces/;

  test.each(catalogue.map((fn) => [fn.name, fn] as const))("%s: a sentence with a figure", (_name, fn) => {
    for (const one of numericArguments(fn)) {
      for (const value of across(one.span, one.parameter.kind === "count")) {
        const refusal = refusalOf(one, value);
        if (refusal === undefined) continue;
        expect(refusal.message).toMatch(SOME_FIGURE);
        expect(refusal.message.length).toBeGreaterThan(20);
        expect(refusal.message.length).toBeLessThan(500);
      }
    }
  });
});

describe("a word that nobody knows", () => {
  const NONSENSE = "zzqx";
  /** Free words: any name is a name. */
  const FREE = new Set(["recipe", "name", "text"]);

  function isWord({ takes, accepts, kind }: AnyParameter): boolean {
    return takes !== "table" && !/\d|number/.test(accepts) && !FREE.has(kind);
  }

  /** The worked case with one word replaced; `undefined` where there is none. */
  function withNonsense(fn: WorksheetFunction, { takes }: AnyParameter, place: number) {
    const [example] = examplesOf(fn);
    if (example === undefined) return undefined;
    const given: unknown[] = [...example.given];
    while (given.length < place) given.push(null);
    given[place] = takes === "cell" ? NONSENSE : [[NONSENSE]];
    return given;
  }

  const cases = catalogue.flatMap((fn) =>
    Object.values(fn.parameters).flatMap((parameter, place) => {
      const given = isWord(parameter) ? withNonsense(fn, parameter, place) : undefined;
      return given === undefined ? [] : [[`${fn.name}, ${parameter.label}`, fn, given] as const];
    }),
  );

  test.each(cases)("%s: it is quoted and told what to do", (_name, fn, given) => {
    const refusal = evaluate(fn, given)
      .flat()
      .find((cell) => cell instanceof Refusal);
    const message = refusal instanceof Refusal ? refusal.message : "";
    expect(message).toContain(`"${NONSENSE}"`);
    expect(message).toMatch(/give|nearest|list|one of|analysis|known are|there are/i);
  });
});
