import { USES } from "../../../src/core/blade/bands";
import { QUENCH_MEDIA } from "../../../src/core/hardening/quench-media";
import { Refusal } from "../../../src/core/refusal";
import { GRINDS } from "../../../src/core/shape/grinds";
import { allTwins } from "../../../src/core/steel/twins";
import { functionNamed } from "../../../src/functions/catalogue";
import { evaluate } from "../../../src/functions/evaluate";

/** What a change of the question must do to the answer: no source is needed to say it. */
export type Kind = "monotone" | "invariant" | "inverse" | "conserved";

/** Figures drawn for one question. */
export interface Draw {
  /** From one figure to another, in whole steps where a step is given. */
  readonly figure: (low: number, high: number, step?: number) => number;
  readonly oneOf: <T>(list: readonly T[]) => T;
  /** Any grade of the table. */
  readonly steel: () => string;
  /** A carbon or low-alloy grade that smiths quench. */
  readonly plain: () => string;
  readonly use: () => string;
  readonly quench: () => string;
  readonly grind: () => string;
}

/** A relation between answers. */
export interface MetamorphicRelation {
  readonly kind: Kind;
  readonly says: string;
  readonly of: readonly string[];
  /** "" where it holds, what was told where it does not, nothing where a question was refused. */
  readonly holds: (draw: Draw) => string | undefined;
}

export type Asked = Readonly<Record<string, unknown>>;
export type Figures = readonly (number | undefined)[];

const STEELS = allTwins().flatMap(({ all }) => all.map(({ name }) => name));
const PLAIN = [
  "1045",
  "1060",
  "1075",
  "1080",
  "1084",
  "1095",
  "5160",
  "52100",
  "6150",
  "80CrV2",
  "O1",
  "W1-10",
];

export function drawFrom(random: () => number): Draw {
  const oneOf = <T>(list: readonly T[]) => list[Math.floor(random() * list.length)] as T;
  return {
    figure(low, high, step) {
      const drawn = low + random() * (high - low);
      return step === undefined ? drawn : Number((Math.round(drawn / step) * step).toFixed(9));
    },
    oneOf,
    steel: () => oneOf(STEELS),
    plain: () => oneOf(PLAIN),
    use: () => oneOf(USES).word,
    quench: () => oneOf(QUENCH_MEDIA).word,
    grind: () => oneOf(GRINDS).word,
  };
}

/** The whole answer to arguments by their keys. */
export function rows(name: string, asked: Asked): readonly (readonly unknown[])[] {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`no function ${name}`);
  const unknown = Object.keys(asked).find((key) => !(key in fn.parameters));
  if (unknown !== undefined) throw new Error(`${name} takes no ${unknown}`);
  return evaluate(
    fn,
    Object.keys(fn.parameters).map((key) => asked[key] ?? null),
  );
}

export const number = (cell: unknown): number | undefined => (typeof cell === "number" ? cell : undefined);

/** One cell of the first row as it came; nothing for a refusal. */
export function cell(name: string, asked: Asked, column = 0): unknown {
  const found = rows(name, asked)[0]?.[column];
  return found instanceof Refusal ? undefined : found;
}

/** A figure of the first row; nothing where there is none. */
export const figure = (name: string, asked: Asked, column = 0) => number(cell(name, asked, column));

/** The figures of the first row. */
export const figures = (name: string, asked: Asked): Figures => rows(name, asked)[0]?.map(number) ?? [];

export const column = <T>(cells: readonly T[]): T[][] => cells.map((one) => [one]);

export const times = (value: number | undefined, factor: number) =>
  value === undefined ? undefined : value * factor;

export function sum(cells: readonly (number | undefined)[]): number | undefined {
  return cells.some((one) => one === undefined)
    ? undefined
    : cells.reduce<number>((all, one) => all + (one ?? 0), 0);
}

const SHARE = 1e-9;

function isSame(one: unknown, other: unknown, error: number): boolean {
  if (typeof one !== "number" || typeof other !== "number") return one === other;
  return Math.abs(one - other) <= Math.max(error, SHARE * Math.max(1, Math.abs(one), Math.abs(other)));
}

type Pair = readonly [one: unknown, other: unknown, error?: number];

const list = (of: string) => of.split(" ");

function compared(kind: Kind, says: string, of: string, pair: (draw: Draw) => Pair): MetamorphicRelation {
  const holds = (draw: Draw) => {
    const [one, other, error = 0] = pair(draw);
    const [ones, others] = [one, other].map((given): readonly unknown[] =>
      Array.isArray(given) ? given : [given],
    );
    if (ones === undefined || others === undefined || [...ones, ...others].includes(undefined))
      return undefined;
    const isHeld = ones.length === others.length && ones.every((each, at) => isSame(each, others[at], error));
    return isHeld ? "" : `${JSON.stringify(one)} against ${JSON.stringify(other)}`;
  };
  return { kind, says, of: list(of), holds };
}

/** Two questions with one answer. */
export const invariant = (says: string, of: string, pair: (draw: Draw) => Pair) =>
  compared("invariant", says, of, pair);
/** A figure, and what comes back after there and back. */
export const inverse = (says: string, of: string, pair: (draw: Draw) => Pair) =>
  compared("inverse", says, of, pair);
/** A whole, and the sum of its parts. */
export const conserved = (says: string, of: string, pair: (draw: Draw) => Pair) =>
  compared("conserved", says, of, pair);

/** Figures that never fall from the first to the last, but for a rounding. */
export function monotone(
  says: string,
  of: string,
  rising: (draw: Draw) => Figures,
  error = 0,
): MetamorphicRelation {
  const holds = (draw: Draw) => {
    const told = rising(draw);
    if (told.length < 2 || told.includes(undefined)) return undefined;
    const isRising = told.every((one, at) => at === 0 || (one ?? 0) >= (told[at - 1] ?? 0) - error - SHARE);
    return isRising ? "" : `not rising: ${told.join(", ")}`;
  };
  return { kind: "monotone", says, of: list(of), holds };
}

/** One figure of a function asked with one argument taking rising values, the others as drawn. */
export function grows(
  name: string,
  key: string,
  asked: (draw: Draw) => Asked & { readonly values: readonly number[] },
  { column: at = 0, falls = false, error = 0 }: { column?: number; falls?: boolean; error?: number } = {},
): MetamorphicRelation {
  const says = `${name}${at === 0 ? "" : `, figure ${at + 1},`} never ${falls ? "rises" : "falls"} with ${key}`;
  return monotone(
    says,
    name,
    (draw) => {
      const { values, ...others } = asked(draw);
      const told = values.map((value) => figure(name, { ...others, [key]: value }, at));
      return falls ? told.reverse() : told;
    },
    error,
  );
}

/** A few rising figures between two ends. */
export function rising(draw: Draw, low: number, high: number, step?: number): readonly number[] {
  return [0, 1, 2].map(() => draw.figure(low, high, step)).sort((one, other) => one - other);
}
