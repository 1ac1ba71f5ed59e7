import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { Refusal } from "../../src/core/refusal";
import type { WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { callOf } from "./arguments";
import { faultOf, plain } from "./judge";

/** What came of one function. */
export interface Outcome {
  readonly name: string;
  readonly calls: number;
  readonly cells: number;
  readonly refused: number;
  readonly milliseconds: number;
  /** The smallest call found that breaks a rule, with the rule; empty where none was found. */
  readonly fault: string;
}

export interface Effort {
  /** Calls to try. */
  readonly calls: number;
  /** Milliseconds after which no further call starts. */
  readonly limit: number;
  readonly seed: number;
}

interface Count {
  calls: number;
  cells: number;
  refused: number;
}

/** Throws where an answer breaks a rule; the same question must give the same answer twice. */
function checkCall(fn: WorksheetFunction, given: readonly unknown[], count: Count): void {
  const answer = evaluate(fn, given);
  count.calls += 1;
  count.cells += answer.flat().length;
  count.refused += answer.flat().filter((cell) => cell instanceof Refusal).length;
  const fault = faultOf(answer);
  if (fault !== undefined) throw new Error(fault);
  if (!isDeepStrictEqual(plain(evaluate(fn, given)), plain(answer))) throw new Error("two answers differ");
}

/** Calls a function with arguments of every kind and reports the first rule broken, made as small as it goes. */
export function fuzzFunction(fn: WorksheetFunction, { calls, limit, seed }: Effort): Outcome {
  const count: Count = { calls: 0, cells: 0, refused: 0 };
  const start = performance.now();
  const result = fc.check(
    fc.property(callOf(fn), (given) => checkCall(fn, given, count)),
    { numRuns: calls, interruptAfterTimeLimit: limit, seed, endOnFailure: false },
  );
  const isBroken = result.failed && result.counterexample !== null;
  const why = result.errorInstance instanceof Error ? result.errorInstance.message : "";
  return {
    name: fn.name,
    ...count,
    milliseconds: performance.now() - start,
    fault: isBroken ? `${fc.stringify(result.counterexample)}: ${why}` : "",
  };
}
