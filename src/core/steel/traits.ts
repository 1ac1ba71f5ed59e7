import { type SteelKind, steelKind } from "../blade/steel-kind";
import { airHardeningMm } from "../hardening/air-hardening";
import { carbidesAt } from "../hardening/carbides";
import { crackRisk } from "../hardening/crack-risk";
import { decarbDepth } from "../hardening/decarb";
import { usualHardening } from "../hardening/hardening-temperature";
import { softBySteel } from "../hardening/hardens";
import { publishedTreatment } from "../hardening/heat-treatment";
import { maxSection } from "../hardening/max-section";
import { findQuench, type QuenchMedium } from "../hardening/quench-media";
import { temperatureText } from "../quantity-text";
import { attemptOr } from "../refusal";
import { type SteelAsked, steelAsked } from "./asked";
import { type Ratings, ratingsOf, toolSteelRow } from "./ratings";
import { stainless } from "./stainless";
import type { Steel } from "./steel";

/** How a steel takes to rust. */
const RUST_WORDS = ["stainless", "barely stainless", "slow to rust", "rusts"] as const;

export type RustWord = (typeof RUST_WORDS)[number];

/** What a shop must have to harden a steel well, the least first. */
export const SHOP_NEEDS = [
  "forge or kiln",
  "steady kiln",
  "kiln above 900 °C (1652 °F)",
  "outside heat treater",
] as const;

export type ShopNeed = (typeof SHOP_NEEDS)[number];

/** What a steel is like in the shop and at the edge. */
export interface Traits {
  /** Kind of steel as the trade speaks of it. */
  readonly kind: SteelKind | "does not harden" | "not known";
  /** Toughness and wear; undefined where none are held. */
  readonly ratings: Ratings | undefined;
  /** Carbide left when hardened [volume %]; undefined where it is not known. */
  readonly carbide: number | undefined;
  /** In words, with the section. */
  readonly depth: string;
  /** Risk in the quench, in words. */
  readonly safety: string;
  /** What hardening does to its size, in words. */
  readonly sizeChange: string;
  /** What the fire does to its skin, in words. */
  readonly skin: string;
  /** How it stands against rust. */
  readonly rust: RustWord;
  /** Hardening window in words, "" where none is held. */
  readonly window: string;
  /** What a shop must have at the least. */
  readonly need: ShopNeed;
  /** What the shop must have, in words. */
  readonly needs: string;
  /** What the traits rest on, in words. */
  readonly basis: string;
}

const FAST_OIL = findQuench("fast oil");
/** Hardening through so many mm in fast oil counts as deep or as medium: set for this library, common practice. */
const DEPTH = { deep: 20, medium: 6 };

function depthText(steel: Steel): string {
  const air = airHardeningMm(steel);
  if (air !== undefined) return `deep: about ${air} mm in still air`;
  const mm = attemptOr(undefined, () => maxSection(steel, "fast oil").fullyHardMm);
  if (mm === undefined) return "not known";
  const word = mm >= DEPTH.deep ? "deep" : mm >= DEPTH.medium ? "medium" : "shallow";
  return `${word}: about ${mm.toFixed(mm < 10 ? 1 : 0)} mm in fast oil`;
}

/** The mildest bath that the steel's own sheet names, fast oil where it names none. */
export function usualQuench(steel: Steel): QuenchMedium {
  const printed = publishedTreatment(steel)?.quench ?? "";
  if (airHardeningMm(steel) !== undefined) return findQuench("still air");
  return /water|brine/.test(printed) && !printed.includes("oil") ? findQuench("agitated water") : FAST_OIL;
}

const SAFETY = { low: "high", raised: "medium", high: "low" } as const;

function safetyText(steel: Steel, quench: QuenchMedium): string {
  return `${toolSteelRow(steel)?.safety || SAFETY[crackRisk(steel, quench).rank]} in ${quench.word}`;
}

/** By the bath alone, as the handbooks' words go: common practice. */
function sizeChangeText(steel: Steel, { kind }: QuenchMedium): string {
  const printed = toolSteelRow(steel)?.sizeChange ?? "";
  if (printed !== "") return printed;
  if (kind === "air") return "very low";
  return kind === "water" ? "high" : "medium";
}

const SOAK_MINUTES = 10;

function skinText(steel: Steel, hardenC: number): string {
  const printed = toolSteelRow(steel)?.skin ?? "";
  const mm = attemptOr(undefined, () => decarbDepth(steel, hardenC, SOAK_MINUTES));
  const loss = mm === undefined ? "" : `about ${mm.toFixed(2)} mm in ${SOAK_MINUTES} min, bare`;
  return [printed === "" ? "" : `${printed} resistance`, loss].filter((part) => part !== "").join("; ");
}

/** Bulk chromium that slows rust without keeping it off [mass %]: common practice, no source. */
const SLOWS_RUST = 4;

function rustOf(steel: Steel, hardenC: number | undefined): RustWord {
  const verdict = attemptOr("", () => stainless(steel, hardenC).verdict);
  if (verdict.startsWith("stainless")) return "stainless";
  if (verdict.startsWith("barely")) return "barely stainless";
  if (verdict === "" && steel.family.endsWith("stainless")) return "barely stainless";
  return steel.composition.Cr >= SLOWS_RUST ? "slow to rust" : "rusts";
}

/** From here a forge no longer serves, and from there a salt bath or vacuum furnace is needed [°C]: common practice. */
const KILN = { aboveC: 900, outsideC: 1120 };
/**
 * More carbon than the eutectoid comes out right only at a steady temperature; plain steel a little above it is
 * still hardened by eye, since no alloy has to be soaked into solution [mass %]: common practice, no source.
 */
const STEADY_CARBON = { alloyed: 0.88, plain: 1 };

function needOf(steel: Steel, hardenC: number): ShopNeed {
  if (steel.family === "high speed" || hardenC > KILN.outsideC) return "outside heat treater";
  if (hardenC > KILN.aboveC) return "kiln above 900 °C (1652 °F)";
  const isPlain = attemptOr(undefined, () => steelKind(steel)) === "plain high carbon";
  return steel.composition.C >= STEADY_CARBON[isPlain ? "plain" : "alloyed"]
    ? "steady kiln"
    : "forge or kiln";
}

/** Stainless and high-chromium steels keep much austenite that a deep freeze turns: common practice. */
function freezeHelps({ composition: { C, Cr } }: Steel): boolean {
  return Cr >= 10.5 && C >= 0.45;
}

function needsText(steel: Steel, need: ShopNeed, hardenC: number, quench: QuenchMedium): string {
  const parts: Readonly<Record<ShopNeed, string>> = {
    "forge or kiln": "forge or kiln",
    "steady kiln": "a kiln or salt that holds ±10 °C (18 °F)",
    "kiln above 900 °C (1652 °F)": "a kiln and foil or a coat against scale",
    "outside heat treater": "an outside heat treater",
  };
  const freeze = freezeHelps(steel) ? "; deep freeze straight after the quench helps" : "";
  const bath = quench.kind === "air" ? "plates or air" : quench.word;
  return `${parts[need]}, about ${temperatureText(hardenC)}; ${bath}${freeze}`;
}

function windowText(steel: Steel): string {
  const { low, high } = publishedTreatment(steel)?.harden ?? { low: null, high: null };
  if (low === null || high === null) return "";
  return low === high ? temperatureText(low) : `${temperatureText(low)} to ${temperatureText(high)}`;
}

/** Where ratings and carbides come from, in words. */
function basisText(ratings: Ratings | undefined, isRecalled: boolean | undefined): string {
  const rated = ratings === undefined ? "not rated" : `ratings ${ratings.basis}`;
  if (isRecalled === undefined) return rated;
  return `${rated}; carbide ${isRecalled ? "from memory" : "calculated"}`;
}

function traitsOf(steel: Steel, hardenC: number | undefined): Traits {
  const soft = softBySteel(steel) !== "";
  const carbides = soft ? undefined : attemptOr(undefined, () => carbidesAt(steel, hardenC));
  const ratings = soft ? undefined : ratingsOf(steel, hardenC);
  const celsius = hardenC ?? usualHardening(steel).celsius;
  const quench = usualQuench(steel);
  const need = needOf(steel, celsius);
  return {
    kind: soft ? "does not harden" : (attemptOr(null, () => steelKind(steel)) ?? "not known"),
    ratings,
    carbide: carbides?.volume,
    depth: soft ? "none" : depthText(steel),
    safety: soft ? "" : safetyText(steel, quench),
    sizeChange: soft ? "" : sizeChangeText(steel, quench),
    skin: soft ? "" : skinText(steel, celsius),
    rust: rustOf(steel, hardenC),
    window: windowText(steel),
    need,
    needs: soft ? "" : needsText(steel, need, celsius, quench),
    basis: basisText(ratings, carbides?.isRecalled),
  };
}

const known = new WeakMap<Steel, Traits>();

/**
 * What a steel is like: kind, toughness and wear, carbide, how it hardens and rusts, and what a shop must
 * have for it. Rules of thumb for a choice; the maker's heat treatment matters more than the name.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param hardenC - Hardening temperature [°C]; the usual one of the steel where left out.
 * @returns Words, and figures of carbide and chromium as the record says.
 * @throws NotAvailable for a name that no grade bears.
 * Error: that of each relation behind it. Source: as the basis in the answer names it; common practice where no
 * handbook is named.
 */
export function steelTraits(steel: SteelAsked, hardenC?: number): Traits {
  steel = steelAsked(steel);
  if (hardenC !== undefined) return traitsOf(steel, hardenC);
  let traits = known.get(steel);
  if (traits === undefined) {
    traits = traitsOf(steel, undefined);
    known.set(steel, traits);
  }
  return traits;
}
