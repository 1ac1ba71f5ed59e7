import { withinWords } from "../cell-text";
import { numberText, quantityText } from "../quantity-text";
import type { RustWord, ShopNeed, Traits } from "../steel/traits";
import type { Use } from "./bands";
import { chanceText } from "./chance";
import { HARD_EDGE_MM } from "./hard-part";
import { LIKELY_CHANCE } from "./status";
import { type Suitability, wantsSoftBody } from "./suitability";

/** What the words on a steel are made of. */
export interface Told {
  readonly use: Use;
  readonly suits: Suitability;
  readonly isNamed: boolean;
  readonly traits: Traits;
  readonly chance: number | undefined;
  /** mm, and the thickness it is held against. */
  readonly hardensMm: number | undefined;
  readonly thickness: number | undefined;
  readonly bath: string;
  /** Time within which it must be cooled past the nose of its diagram [s]. */
  readonly noseS: number | undefined;
  /** How far the likely hardness lies outside the band [HRC], above it positive; 0 inside. */
  readonly miss: number;
  /** What a brittle range has to do with the temper, where it has; else empty. */
  readonly brittle: string;
  /** What the bath of the question does to the steel, where it is harsher than the steel wants; else empty. */
  readonly harsh: string;
}

const SUITS: Readonly<Record<Suitability, string>> = {
  best: "its kind suits this use best",
  good: "its kind suits this use",
  fair: "its kind serves, others suit better",
  caution: "its kind is not usual for this use",
  no: "",
};

/** From here a rating is worth saying, and up to there it is a lack. */
const RATING = { much: 6, little: 4, wearMuch: 5, wearLittle: 3 };
/** A section this many times what is asked leaves room in the quench; plate figures are good to this factor. */
export const CLEAR_MARGIN = 1.5;

/** What is worth saying in favour of a blade that is wetted and wiped. */
const BRIGHT: readonly RustWord[] = ["stainless", "slow to rust"];

const NEEDED: Readonly<Record<ShopNeed, string>> = {
  "forge or kiln": "a forge will do",
  "steady kiln": "",
  "kiln above 900 °C (1652 °F)": "",
  "outside heat treater": "",
};

const millimetres = (mm: number) => quantityText(Number(mm.toPrecision(2)), "mm");

function virtues({ use, traits, isNamed, suits, hardensMm, bath }: Told): string[] {
  const { toughness = 5, wear = 4 } = traits.ratings ?? {};
  const struck = use.service !== "light";
  return [
    isNamed ? "usually named for this use" : SUITS[suits],
    `band ${numberText(use.low)} to ${quantityText(use.high, "HRC")}`,
    struck && toughness >= RATING.much ? "tough" : "",
    !struck && wear >= RATING.wearMuch ? "holds its edge" : "",
    !struck && BRIGHT.includes(traits.rust) ? traits.rust : "",
    hardensMm === undefined ? "" : `hardens about ${millimetres(hardensMm)} in ${bath}`,
    NEEDED[traits.need],
  ];
}

const LACKS: Readonly<Record<ShopNeed, string>> = {
  "forge or kiln": "",
  "steady kiln": "wants a steady kiln",
  "kiln above 900 °C (1652 °F)": "wants a kiln above 900 °C (1652 °F)",
  "outside heat treater": "wants an outside heat treater",
};

/** What of an edge or a bit gets hard that is thicker than hardens through. */
function partText({ part }: Use, hardensMm: number, hard: string): string {
  if (hardensMm < HARD_EDGE_MM) return `shallow even for an edge: ${hard}`;
  return `hard only where ${part === "bit" ? "the bit" : "it"} is under about ${hard} thick`;
}

function marginLack({ use, hardensMm, thickness }: Told): string {
  if (hardensMm === undefined || thickness === undefined) return "";
  if (wantsSoftBody(use)) {
    return hardensMm < thickness ? "" : "hardens deeper than the blade is thick: the clay has to do it all";
  }
  const hard = millimetres(hardensMm);
  if (use.part !== "whole") return hardensMm < thickness ? partText(use, hardensMm, hard) : "";
  if (hardensMm >= CLEAR_MARGIN * thickness) return "";
  const whole = numberText(thickness);
  return hardensMm < thickness
    ? `not hard through at ${whole} mm: to about ${hard}`
    : `little margin in the quench: ${hard} for ${whole} mm`;
}

/** Under this the blade has to be in the bath at once: common practice. */
const HASTE_S = 1;

function hasteLack({ noseS }: Told): string {
  if (noseS === undefined || noseS >= HASTE_S) return "";
  return `cool fast: ${quantityText(Number(noseS.toPrecision(1)), "s")} to pass the nose`;
}

function missText({ miss }: Told): string {
  if (miss === 0) return "";
  return `${quantityText(Math.abs(miss), "HRC")} ${miss > 0 ? "above" : "below"} the band`;
}

/** What speaks against the temper: by how much it misses the band, and the brittle range that it avoids or lies in. */
function chanceLacks(told: Told): string[] {
  const { chance, brittle } = told;
  const reasons = [missText(told), brittle].filter((part) => part !== "");
  if (reasons.length > 0 || chance === undefined || chance >= LIKELY_CHANCE) return reasons;
  return [`only ${chanceText(chance)} sure of the band`];
}

function lacks(told: Told): string[] {
  const { use, traits } = told;
  const { toughness = 5, wear = 4 } = traits.ratings ?? {};
  const struck = use.service !== "light";
  const brittle = toughness <= RATING.little ? (struck ? "chips sooner" : "little toughness") : "";
  const wears = wear <= RATING.wearLittle && use.angleLow !== null ? "the edge wears sooner" : "";
  const rusts = BRIGHT.includes(traits.rust) ? "" : traits.rust;
  const whole = [told.harsh, marginLack(told), hasteLack(told)];
  return struck
    ? [...whole, brittle, ...chanceLacks(told), LACKS[traits.need], rusts]
    : [...whole, LACKS[traits.need], brittle, rusts, wears, ...chanceLacks(told)];
}

/** Reasons this many at most: a sentence is read, a list is not. */
const MOST = { why: 5, givesUp: 5 };

function sentence(parts: readonly string[], most: number): string {
  const text = withinWords(parts.filter((part) => part !== "").slice(0, most));
  return text === "" ? "" : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** Why a steel stands where it stands, in one sentence. */
export function whyText(told: Told): string {
  return sentence(virtues(told), MOST.why);
}

/** What is given up with it, in one sentence. */
export function givesUpText(told: Told): string {
  return sentence(lacks(told), MOST.givesUp);
}
