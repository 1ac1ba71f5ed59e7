import { USES } from "../../../src/core/blade/bands";
import { QUENCH_MEDIA } from "../../../src/core/hardening/quench-media";
import { Refusal } from "../../../src/core/refusal";
import { allTwins } from "../../../src/core/steel/twins";
import { functionNamed } from "../../../src/functions/catalogue";
import { randomFrom } from "../../stock/brute-force";
import { type Asked, rows } from "../relations/mechanism";

/** A blade that every function is asked about. */
export interface Blade {
  readonly steel: string;
  readonly use: string;
  readonly quench: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly target: number;
  readonly temperC: number;
}

/** Cells of an answer by their labels; a refusal as "code sentence". */
export type Told = Readonly<Record<string, unknown>>;

export const BLADES = 1000;
const STEELS = allTwins().flatMap(({ all }) => all.map(({ name }) => name));

/** So many blades, the same ones from the same seed. */
export function bladesFrom(seed: number, count: number): readonly Blade[] {
  const random = randomFrom(seed);
  const between = (low: number, high: number) => low + random() * (high - low);
  const rounded = (value: number, step: number) => Number((Math.round(value / step) * step).toFixed(6));
  const oneOf = <T>(list: readonly T[]) => list[Math.floor(random() * list.length)] as T;
  return Array.from({ length: count }, () => ({
    steel: oneOf(STEELS),
    use: oneOf(USES).word,
    quench: oneOf(QUENCH_MEDIA).word,
    length: rounded(between(70, 900), 1),
    width: rounded(between(15, 70), 0.5),
    thickness: rounded(between(1.5, 9), 0.1),
    target: rounded(between(40, 64), 0.5),
    temperC: rounded(between(150, 600), 5),
  }));
}

const shown = (cell: unknown) => (cell instanceof Refusal ? `${cell.code} ${cell.message}` : cell);

/** The functions that were asked about a blade so far. */
export const askedOf = new Set<string>();

/** Every row that a function gives, by the labels of its answer. */
export function table(name: string, asked: Asked): readonly Told[] {
  askedOf.add(name);
  const { result } = functionNamed(name) as unknown as { result: unknown };
  const labels = Array.isArray(result) ? result.map(({ label }) => String(label)) : ["answer"];
  return rows(name, asked).map((row) =>
    Object.fromEntries(row.map((cell, at) => [labels[at] ?? at, shown(cell)])),
  );
}

/** The first of them. */
export const told = (name: string, asked: Asked): Told => table(name, asked)[0] ?? {};

/** The line of RUN_PLAN for a blade alone, by its headings. */
function planOf(line: Asked): Told {
  askedOf.add("RUN_PLAN");
  const [headings = [], row = []] = rows("RUN_PLAN", { lines: [Object.keys(line), Object.values(line)] });
  return Object.fromEntries(headings.map((heading, at) => [String(heading), shown(row[at])]));
}

export const number = (cell: unknown): number | undefined => (typeof cell === "number" ? cell : undefined);

/** The answers about one blade, each asked for once. */
export class Answers {
  readonly #known = new Map<string, Told>();

  constructor(readonly blade: Blade) {}

  /** What is known of the blade without a hardness wanted. */
  get part(): Asked {
    const { steel, use, quench, length, thickness } = this.blade;
    return { steel, use, quench, length, thickness };
  }

  ask(name: string, asked: Asked): Told {
    return this.#once(`${name} ${JSON.stringify(asked)}`, () => told(name, asked));
  }

  /** A line of RUN_PLAN, with further cells. */
  planned(more: Asked = {}): Told {
    const line = { ...this.part, width: this.blade.width, good: 4, yield: 0.9, ...more };
    return this.#once(`RUN_PLAN ${JSON.stringify(line)}`, () => planOf(line));
  }

  #once(key: string, ask: () => Told): Told {
    const known = this.#known.get(key) ?? ask();
    this.#known.set(key, known);
    return known;
  }
}

/** A cell, or nothing for a refusal and for the words that stand in place of an answer. */
export function answered(cell: unknown): string | number | undefined {
  if (typeof cell === "number") return cell;
  if (typeof cell !== "string" || cell.startsWith("#")) return undefined;
  return ["", "none held", "none", "not judged", "no use given"].includes(cell) ? undefined : cell;
}

/** What is compared, the two answers, and how far figures may lie apart. */
export type Pair = readonly [what: string, one: unknown, other: unknown, error?: number];

/** The pairs that contradict each other, in words; "" where none does. An answer against none is one. */
export function differing(pairs: readonly Pair[]): string {
  const isSame = (one: unknown, other: unknown, error: number) =>
    typeof one === "number" && typeof other === "number"
      ? Math.abs(one - other) <= error + 1e-9
      : one === other;
  return pairs
    .filter(([, one, other, error = 0]) => !isSame(answered(one), answered(other), error))
    .map(([what, one, other]) => `${what}: ${one} against ${other}`)
    .join("; ");
}
