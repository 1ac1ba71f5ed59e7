import table from "../../data/steel/tool-steels.json";
import { type Carbides, carbidesAt } from "../hardening/carbides";
import { attemptOr } from "../refusal";
import { relation } from "../relation";
import { number, oneOf, orNull, records, text } from "../table";
import { heldName } from "./kin";
import type { Steel } from "./steel";

/** Toughness and wear of a steel on the handbook's scale, and where they come from. */
export interface Ratings {
  /** From 1, low, to 9, high [-]. */
  readonly toughness: number;
  /** Resistance to wear from 1, low, to 9, high [-]. */
  readonly wear: number;
  /** Where the ratings come from. */
  readonly basis: "handbook" | "handbook, from memory" | "by relation";
}

/** Ratings of tool steels. */
export const TOOL_STEEL_RATINGS = relation({
  title: "Toughness and wear of tool steels, 1 to 9",
  source: "tool-steel-ratings",
  locator:
    "high-speed and hot-work steels as printed; cold-work, shock, low-alloy and water-hardening steels from memory",
  evidence: "compiled",
  inputs: {},
  output: { label: "rating", unit: "1-9" },
  error: {
    size: 1,
    unit: "",
    kind: "a rating at the usual working hardness of the steel, not a measurement",
  },
});

/** The same for steels that the handbook does not rate. */
export const RATING_RELATION = relation({
  title: "Toughness and wear from carbon in solution and carbide",
  source: "tool-steel-ratings",
  locator: "toughness 13.2 - 11.2 C - 0.39 V, wear 3.1 + 0.35 V; C mass % in solution, V volume % of carbide",
  evidence: "fitted",
  inputs: {},
  output: { label: "rating", unit: "1-9" },
  error: {
    size: 2,
    unit: "",
    kind: "half-width that covers 90 % of 24 rated grades, each left out of its own fit: 1.3 for toughness, 1.7 for wear",
  },
  note: "Stainless: 0.1 % C added to what is calculated in solution, as their hardness from the quench asks for.",
});

const FIT = { toughness: [13.2, 11.2, 0.39], wear: [3.1, 0.35] } as const;
/** Stainless steels quench harder than the calculated carbon leads to expect, by about this much carbon [mass %]. */
const STAINLESS_CARBON = 0.1;

const printed = new Map(
  records(table, {
    grade: text,
    wear: orNull(number),
    toughness: orNull(number),
    safety: text,
    sizeChange: text,
    skin: text,
    seen: oneOf(["READ", "MEMORY"]),
  }).map((row) => [row.grade, row]),
);

type Printed = typeof printed extends ReadonlyMap<string, infer T> ? T : never;

/** Class names share the row of their bare name: M2 for M2 (high C), W1 for W1-9. */
function bareName(designation: string): string {
  return designation.replace(/ \(.+\)$/, "").replace(/^(W1)-.+$/, "$1");
}

/** What the handbooks say of a tool steel, under its own name or that of its near kin. */
export function toolSteelRow(steel: Steel): Printed | undefined {
  return heldName(steel, (designation) => printed.get(bareName(designation)));
}

function onScale(value: number): number {
  return Math.min(9, Math.max(1, Math.round(value)));
}

function byRelation(steel: Steel, { volume, dissolvedCarbon }: Carbides): Ratings {
  const carbon = dissolvedCarbon + (steel.family === "martensitic stainless" ? STAINLESS_CARBON : 0);
  const [level, perCarbon, perVolume] = FIT.toughness;
  const [wear, wearPerVolume] = FIT.wear;
  return {
    toughness: onScale(level - perCarbon * carbon - perVolume * volume),
    wear: onScale(wear + wearPerVolume * volume),
    basis: "by relation",
  };
}

/**
 * Toughness and wear of a steel, 1 low to 9 high: as the handbook rates it, else by relation.
 *
 * @param steel - A grade or an analysis.
 * @param hardenC - Hardening temperature [°C]; changes what is not rated.
 * @returns Undefined where neither a rating nor its carbides are known. A rating is good to 1, the relation to 2.
 */
export function ratingsOf(steel: Steel, hardenC?: number): Ratings | undefined {
  const row = toolSteelRow(steel);
  const { toughness = null, wear = null, seen } = row ?? {};
  if (toughness !== null && wear !== null) {
    return { toughness, wear, basis: seen === "READ" ? "handbook" : "handbook, from memory" };
  }
  const carbides = attemptOr(undefined, () => carbidesAt(steel, hardenC));
  return carbides === undefined ? undefined : byRelation(steel, carbides);
}
