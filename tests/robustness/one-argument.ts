import type { AnyParameter, WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";
import { type Span, spanOf } from "./span";

/** A numeric argument of a function, with a worked case in which it may be changed. */
export interface OneArgument {
  readonly fn: WorksheetFunction;
  readonly parameter: AnyParameter;
  readonly span: Span;
  /** The answer of the worked case with this argument set to a value. */
  readonly ask: (value: number | string) => ReturnType<typeof evaluate>;
}

/** A range or a series keeps its other cells; the value takes the place of the first. */
function replaced(old: unknown, value: number | string, { takes }: AnyParameter): unknown {
  if (takes === "cell" || !Array.isArray(old)) return value;
  const [first, ...others] = old as readonly unknown[];
  return [Array.isArray(first) ? [value, ...first.slice(1)] : value, ...others];
}

function argumentAt(fn: WorksheetFunction, parameter: AnyParameter, place: number): OneArgument | undefined {
  const span = spanOf(parameter.accepts);
  const [example] = examplesOf(fn);
  if (span === undefined || example === undefined) return undefined;
  const ask = (value: number | string) => {
    const given: unknown[] = Array.from(
      { length: Math.max(example.given.length, place + 1) },
      (_, at) => example.given[at] ?? null,
    );
    given[place] = replaced(example.given[place], value, parameter);
    return evaluate(fn, given);
  };
  return { fn, parameter, span, ask };
}

/** The numeric arguments of a function. */
export function numericArguments(fn: WorksheetFunction): OneArgument[] {
  return Object.values(fn.parameters)
    .map((parameter, place) => argumentAt(fn, parameter, place))
    .filter((one) => one !== undefined);
}

const POINTS = 12;
const LEAST = 1e-3;
const MANY_SIZES = 1000;

/** Values across a span, evenly, or evenly in the logarithm where it runs over many sizes. */
export function across({ low, high }: Span, isWhole: boolean): number[] {
  const from = Math.max(low, LEAST);
  const byLogarithm = low >= 0 && high > MANY_SIZES * from;
  const values = Array.from({ length: POINTS }, (_, step) => {
    const share = step / (POINTS - 1);
    return byLogarithm ? from * (high / from) ** share : low + (high - low) * share;
  });
  return isWhole ? values.map(Math.round) : values;
}
