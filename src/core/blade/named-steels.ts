import { attemptOr } from "../refusal";
import { findSteel } from "../steel/find";
import { areTwins } from "../steel/similar-grades";
import type { Steel } from "../steel/steel";
import { USES, type Use } from "./bands";
import { isStainless } from "./steel-kind";

type Test = (steel: Steel) => boolean;

/** Figures of a table are held apart by this much, so that binary fractions do not decide [mass %]. */
const TINY = 0.0001;
/** Plain carbon steel with more manganese than this is sold as a manganese steel [mass %]. */
const MUCH_MANGANESE = 1.1;

function plainBetween(low: number, high: number): Test {
  return ({ family, composition: { C, Mn } }) =>
    family === "plain carbon" && Mn < MUCH_MANGANESE && C >= low - TINY && C <= high + TINY;
}

function stainlessBetween(low: number, high: number, carbon: number): Test {
  return (steel) => {
    const { C, Cr } = steel.composition;
    return isStainless(steel) && Cr >= low - TINY && Cr <= high + TINY && C >= carbon - TINY;
  };
}

/** What one item of the list names: "5160", "1055 to 1075", "plain 0.6-0.9 % C", "12-14 % Cr stainless", "stainless". */
function testOf(item: string): Test {
  const plain = /^plain ([\d.]+)-([\d.]+) % C$/.exec(item);
  if (plain !== null) return plainBetween(Number(plain[1]), Number(plain[2]));
  const chromium = /^([\d.]+)-([\d.]+) % Cr stainless(?: of ([\d.]+) % C and more)?$/.exec(item);
  if (chromium !== null)
    return stainlessBetween(Number(chromium[1]), Number(chromium[2]), Number(chromium[3] ?? 0));
  if (item === "stainless") return isStainless;
  const span = /^(\S+) to (\S+)$/.exec(item);
  if (span === null) {
    const named = findSteel(item);
    return (steel) => areTwins(named, steel);
  }
  const [low, high] = [span[1] ?? "", span[2] ?? ""].map((name) => findSteel(name).composition.C);
  return plainBetween(low as number, high as number);
}

/** A use with what its list calls by designation alone, classes such as "13-15 % Cr stainless" left out. */
export function namedByDesignation(use: Use): Use {
  let found = byDesignation.get(use);
  if (found === undefined) {
    const items = namedItems(use).filter((item) => designations(item).length > 0);
    found = { ...use, steels: items.join(", ") };
    byDesignation.set(use, found);
  }
  return found;
}

const byDesignation = new WeakMap<Use, Use>();

interface Named {
  readonly tests: readonly Test[];
  /** What was found for a steel: a list asks for each again and again. */
  readonly known: WeakMap<Steel, boolean>;
}

const byList = new Map<string, Named>();

/** The steels that the trade usually names for a use, item by item. */
export function namedItems({ steels }: Use): readonly string[] {
  return steels === "" ? [] : steels.split(", ");
}

function namedBy(use: Use): Named {
  let named = byList.get(use.steels);
  if (named === undefined) {
    named = { tests: namedItems(use).map(testOf), known: new WeakMap() };
    byList.set(use.steels, named);
  }
  return named;
}

/** Whether the trade usually names a steel, or its twin, for a use. */
export function isNamedFor(use: Use, steel: Steel): boolean {
  const { tests, known } = namedBy(use);
  let found = known.get(steel);
  if (found === undefined) {
    found = tests.some((names) => attemptOr(false, () => names(steel)));
    known.set(steel, found);
  }
  return found;
}

/** The grades that an item of a list calls by their designation: "1060 to 1075" both its ends. */
function designations(item: string): readonly string[] {
  const span = /^(\S+) to (\S+)$/.exec(item);
  if (span !== null) return span.slice(1);
  return item.includes("%") || item === "stainless" ? [] : [item];
}

let mentions: ReadonlyMap<string, number> | undefined;

function counted(): ReadonlyMap<string, number> {
  const count = new Map<string, number>();
  for (const name of USES.flatMap((use) => namedItems(use).flatMap(designations)))
    count.set(name, (count.get(name) ?? 0) + 1);
  return count;
}

/** How many of the trade's lists of steels for a use call a grade by its very designation: those are stocked first. */
export function mentionsOf({ name }: Steel): number {
  mentions ??= counted();
  return mentions.get(name) ?? 0;
}
