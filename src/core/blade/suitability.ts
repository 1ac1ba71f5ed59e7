import steelByUse from "../../data/blade/steel-by-use.json";
import { carbidesAt } from "../hardening/carbides";
import { attemptOr } from "../refusal";
import { relation } from "../relation";
import { ratingsOf } from "../steel/ratings";
import type { Steel } from "../steel/steel";
import { oneOf, records, text } from "../table";
import type { Use } from "./bands";
import { isNamedFor } from "./named-steels";
import { isStainless, STEEL_KINDS, type SteelKind } from "./steel-kind";

export const STEEL_BY_USE = relation({
  title: "Which steel suits which kind of blade",
  source: "steel-by-use",
  locator: "table of steel by use",
  evidence: "common practice",
  inputs: {},
  output: { label: "suitability", unit: "" },
  error: {
    size: null,
    unit: "",
    kind: "a rule of thumb; the maker's heat treatment matters more than the name",
  },
});

/** From this length a struck blade counts as long, mm. */
const LONG_MM = 400;

const verdict = oneOf([
  "best",
  "good",
  "yes",
  "fair",
  "low end",
  "caution",
  "edge only",
  "differential only",
  "no",
]);

type Verdict = ReturnType<typeof verdict>;

const printed = records(steelByUse, {
  kind: oneOf(STEEL_KINDS),
  saidAs: text,
  sword: verdict,
  chopper: verdict,
  field: verdict,
  kitchen: verdict,
  edgeTool: verdict,
  spring: verdict,
});

const TABLE = new Map(printed.map((row) => [row.kind, row]));

type Column = "sword" | "chopper" | "field" | "kitchen" | "edgeTool" | "spring";

/** How well a kind of steel suits a use, the best first. */
export const SUITABILITIES = ["best", "good", "fair", "caution", "no"] as const;

export type Suitability = (typeof SUITABILITIES)[number];

/** A use, a steel and the length where it is known. */
export interface SteelQuestion {
  readonly use: Use;
  readonly steel: Steel;
  /** mm */
  readonly length?: number | undefined;
}

/** A long blade that is struck. */
export function isLongImpact({ use, length }: Omit<SteelQuestion, "steel">): boolean {
  return use.service === "impact" && (use.isLong || (length !== undefined && length > LONG_MM));
}

/** A kind as a sentence calls it: "plain high-carbon steel". */
export function saidAs(kind: SteelKind): string {
  return TABLE.get(kind)?.saidAs ?? kind;
}

/** The column that a use is read in: a blade that is struck is a chopper, but for short ones of stainless. */
function columnOf({ group, service }: Use, kind: SteelKind): Column {
  if (service === "none") return "spring";
  if (group === "sword" || group === "chopper") return group;
  if (service === "impact") return kind === "stainless" && group !== "tool" ? group : "chopper";
  return group === "tool" ? "edgeTool" : group;
}

/** A sword with a hard edge and a soft body. */
export function wantsSoftBody({ group, part }: Use): boolean {
  return group === "sword" && part === "edge";
}

/** Kinds that clay does not leave soft behind the edge. */
const DEEP: readonly SteelKind[] = STEEL_KINDS.filter(
  (kind) => kind !== "medium carbon" && kind !== "plain high carbon",
);

export function hardensDeep(kind: SteelKind): boolean {
  return DEEP.includes(kind);
}

/** What a verdict with a condition comes to for a use. */
function settled(found: Verdict, use: Use): Suitability {
  switch (found) {
    case "yes":
      return "good";
    case "low end":
      return "fair";
    case "edge only":
      return use.part === "whole" ? "caution" : "good";
    case "differential only":
      return wantsSoftBody(use) ? "good" : "no";
    default:
      return found;
  }
}

/** An edge of less than this a side is thin, and coarse carbide breaks out of it: common practice, no source. */
const THIN_EDGE = 15;
const COARSE_CARBIDE = 10;

function isTooCoarse({ use, steel }: SteelQuestion): boolean {
  if (use.angleLow === null || use.angleLow >= THIN_EDGE) return false;
  return attemptOr(0, () => carbidesAt(steel).volume) > COARSE_CARBIDE;
}

/** Under this carbon an edge does not last, and with that much chromium carbon alone does not tell [mass %]. */
export const EDGE_CARBON = 0.5;
export const ALLOY_HARDENED = 3;

/** Whether a lean steel holds too little carbon for a lasting edge. */
export function lacksCarbon({ composition: { C, Cr } }: Steel): boolean {
  return C < EDGE_CARBON && Cr < ALLOY_HARDENED;
}

/** A band that starts below this asks of an edge that it can be mended, not that it lasts [HRC]. */
const LASTING_EDGE = 50;
/** Less carbon than this holds no edge even where it is meant to be mended [mass %]: common practice. */
const STRUCK_CARBON = 0.45;
/** Rated lower a steel chips where it is struck, hard all through or at the edge alone: common practice. */
const STRUCK_TOUGHNESS = { whole: 5, edge: 2 };

function chipsWhenStruck({ use, steel }: SteelQuestion): boolean {
  if (use.service !== "impact") return false;
  const least = use.part === "whole" ? STRUCK_TOUGHNESS.whole : STRUCK_TOUGHNESS.edge;
  return (ratingsOf(steel)?.toughness ?? least) < least;
}

const worse = (one: Suitability, other: Suitability) =>
  SUITABILITIES.indexOf(one) >= SUITABILITIES.indexOf(other) ? one : other;

/** What too little carbon for a lasting edge leaves of the verdict. */
function byCarbon({ use, steel }: SteelQuestion): Suitability {
  if (use.angleLow === null || !lacksCarbon(steel)) return "best";
  if (use.service !== "impact") return "no";
  return use.low >= LASTING_EDGE || steel.composition.C < STRUCK_CARBON ? "caution" : "best";
}

/** What the carbon, the carbide and the toughness of the steel itself leave of the verdict on its kind. */
function atBest(question: SteelQuestion): Suitability {
  if (chipsWhenStruck(question)) return "caution";
  const isStruckStainless = question.use.service === "impact" && isStainless(question.steel);
  return worse(byCarbon(question), isStruckStainless || isTooCoarse(question) ? "fair" : "best");
}

/** Whether the trade keeps a steel to the low end of the band. */
export function keepsToLowEnd({ use }: SteelQuestion, kind: SteelKind): boolean {
  return TABLE.get(kind)?.[columnOf(use, kind)] === "low end";
}

/**
 * How well a steel suits a use: best where the trade names it for this very use, else by the trade's table of
 * kinds, with what its own carbon, carbide and toughness change.
 *
 * @param question - Use, steel and length [mm].
 * @param kind - Of the steel.
 * Source: common practice of the trade (`STEEL_BY_USE`).
 */
export function suitability(question: SteelQuestion, kind: SteelKind): Suitability {
  const { use } = question;
  const row = TABLE.get(kind);
  if (row === undefined || (kind === "stainless" && isLongImpact(question))) return "no";
  if (wantsSoftBody(use) && hardensDeep(kind)) return "no";
  if (isNamedFor(use, question.steel)) return "best";
  return worse(settled(row[columnOf(use, kind)], use), atBest(question));
}
