import fc from "fast-check";
import { catalogue, functionNamed } from "../../src/functions/catalogue";
import type { AnyParameter, WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";
import { type Span, spanOf } from "./span";

/** What a cell may hold by accident: what people type, paste or import, and what hosts hand over. */
const ODD: readonly unknown[] = [
  "",
  " ",
  null,
  undefined,
  true,
  false,
  0,
  -0,
  -1,
  1e-300,
  -1e-300,
  1e300,
  -1e300,
  Number.MAX_VALUE,
  Number.MAX_SAFE_INTEGER,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  45_383,
  "0,8",
  "400F",
  "400 °F",
  "1/4 in",
  "1-1/4 in",
  "3/16",
  "2 lb",
  "90 min",
  "5 furlongs",
  "1e999",
  "1e-999 mm",
  "--3",
  "=1+1",
  "A2",
  "constructor",
  "__proto__",
  "toString",
  "C 0.95 Mn 0.40",
  "C 95",
  "C",
  "сталь 65Г",
  "1".repeat(400),
  "x".repeat(5000),
  "\u0000",
  "\ud800",
  "🗡️",
  "#N/A",
  { type: "Error", basicValue: "#DIV/0!" },
  { type: "Error", basicValue: "#N/A" },
  { type: "Entity", text: "1095", basicValue: "1095" },
  { type: "FormattedNumber", basicValue: 12.5 },
  { type: "String", basicValue: "1084" },
  { code: "#REF!" },
  {},
  [],
  [[]],
];

function flat(given: unknown): unknown[] {
  return Array.isArray(given) ? given.flatMap(flat) : [given];
}

const LISTS: Readonly<Record<string, string>> = {
  quench: "QUENCHES",
  grind: "GRINDS",
  use: "USES",
  steel: "STEELS",
};

/** Everything a list function offers. */
function listed(name: string): unknown[] {
  const fn = functionNamed(name);
  return fn === undefined ? [] : evaluate(fn, []).flatMap((row) => row.slice(0, 1));
}

function wordsByKind(): ReadonlyMap<string, unknown[]> {
  const words = new Map<string, unknown[]>();
  for (const [kind, name] of Object.entries(LISTS)) words.set(kind, listed(name));
  for (const fn of catalogue) {
    Object.values(fn.parameters).forEach(({ kind }, place) => {
      const given = examplesOf(fn).flatMap((example) => flat(example.given[place]));
      words.set(kind, [...(words.get(kind) ?? []), ...given]);
    });
  }
  return words;
}

/** Values that stand in worked cases and lists, by kind of argument. */
const WORDS = wordsByKind();

/** Even in the logarithm where the span runs over many sizes, so that small and large are tried alike. */
function inSpan({ low, high }: Span): fc.Arbitrary<number> {
  if (low >= 0 && high > 1000 * Math.max(low, 1e-3)) {
    const least = Math.log(Math.max(low, 1e-3));
    return fc.double({ min: least, max: Math.log(high), noNaN: true }).map((power) => {
      const value = Math.exp(power);
      return value > 10 ? Math.round(value) : value;
    });
  }
  return fc.double({ min: low, max: high, noNaN: true });
}

/** The ends of a span, a hair inside and outside of them, and far beyond. */
function aboutEnds({ low, high }: Span): fc.Arbitrary<number> {
  const hair = (end: number) => Math.max(Math.abs(end), 1) * 1e-9;
  return fc.constantFrom(
    low,
    high,
    low + hair(low),
    low - hair(low),
    high - hair(high),
    high + hair(high),
    low - Math.abs(high),
    high * 1000 + 1,
  );
}

function isNumeric({ accepts, kind }: AnyParameter): boolean {
  return spanOf(accepts) !== undefined && kind !== "hardness requirement";
}

/** How the cells of a call are chosen. */
interface Manner {
  /** Only what an argument asks for; else now and then anything at all. */
  readonly isCareful: boolean;
  /** Rows of every column, so that columns of one call fit each other. */
  readonly rows: number;
}

/** One cell of an argument: mostly what it asks for, sometimes anything at all. */
function cell(parameter: AnyParameter, isCareful: boolean): fc.Arbitrary<unknown> {
  const odd = fc.constantFrom(...ODD);
  const words = WORDS.get(parameter.kind) ?? [];
  const known = words.length === 0 ? odd : fc.constantFrom(...words);
  const span = spanOf(parameter.accepts);
  if (span === undefined || !isNumeric(parameter)) {
    if (isCareful) return known;
    return fc.oneof(
      { weight: 10, arbitrary: known },
      { weight: 1, arbitrary: odd },
      { weight: 1, arbitrary: fc.string({ unit: "binary" }) },
    );
  }
  const inside = parameter.kind === "count" ? inSpan(span).map(Math.round) : inSpan(span);
  if (isCareful) return inside;
  return fc.oneof(
    { weight: 5, arbitrary: inside },
    { weight: 4, arbitrary: known },
    { weight: 2, arbitrary: aboutEnds(span) },
    { weight: 1, arbitrary: odd },
    { weight: 1, arbitrary: fc.double() },
  );
}

function column(one: fc.Arbitrary<unknown>, least: number, most: number): fc.Arbitrary<unknown> {
  return fc.array(
    one.map((only) => [only]),
    { minLength: least, maxLength: most },
  );
}

function matrix(one: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  return fc.array(fc.array(one, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 });
}

/** A table with the headings of a worked case, its cells changed here and there. */
function table(fn: WorksheetFunction, place: number): fc.Arbitrary<unknown> {
  const tables = examplesOf(fn)
    .map((example) => example.given[place])
    .filter(Array.isArray) as readonly (readonly (readonly unknown[])[])[];
  const changed = tables.map((rows) =>
    fc.tuple(
      ...rows.map((row, line) =>
        fc.tuple(
          ...row.map((one) =>
            fc.oneof(
              { weight: line === 0 ? 40 : 12, arbitrary: fc.constant(one) },
              { weight: 1, arbitrary: fc.constantFrom(...ODD) },
            ),
          ),
        ),
      ),
    ),
  );
  return fc.oneof(...changed, fc.constantFrom(...ODD));
}

function argument(
  fn: WorksheetFunction,
  parameter: AnyParameter,
  place: number,
  { isCareful, rows }: Manner,
): fc.Arbitrary<unknown> {
  if (parameter.takes === "table") return table(fn, place);
  const one = cell(parameter, isCareful);
  const left = fc.constantFrom(undefined, null, "");
  const wanted = parameter.takes === "cell" ? one : column(one, rows, rows);
  if (isCareful) return parameter.optional ? fc.oneof(wanted, left) : wanted;
  return fc.oneof(
    { weight: 12, arbitrary: wanted },
    { weight: parameter.optional ? 8 : 1, arbitrary: left },
    { weight: 1, arbitrary: column(one, 1, 4) },
    { weight: 1, arbitrary: matrix(one) },
    { weight: 1, arbitrary: one },
  );
}

const MANNER: fc.Arbitrary<Manner> = fc.record({
  isCareful: fc.boolean(),
  rows: fc.integer({ min: 1, max: 6 }),
});

/** A worked case with an argument changed here and there: many functions refuse most of what is put together blindly. */
function varied(fn: WorksheetFunction, manner: Manner): fc.Arbitrary<readonly unknown[]> {
  const parameters = Object.values(fn.parameters);
  const worked = examplesOf(fn).map((example): readonly unknown[] => example.given);
  return fc
    .constantFrom(...(worked.length > 0 ? worked : [[]]))
    .chain((given) =>
      fc.tuple(
        ...parameters.map((parameter, place) =>
          fc.oneof(
            { weight: 4, arbitrary: fc.constant(given[place]) },
            { weight: 1, arbitrary: argument(fn, parameter, place, manner) },
          ),
        ),
      ),
    );
}

/** The arguments of one call, over every declared parameter. */
export function callOf(fn: WorksheetFunction): fc.Arbitrary<readonly unknown[]> {
  const parameters = Object.values(fn.parameters);
  const free = (manner: Manner) =>
    fc.tuple(...parameters.map((parameter, place) => argument(fn, parameter, place, manner)));
  return MANNER.chain((manner) => fc.oneof(free(manner), varied(fn, manner)));
}
