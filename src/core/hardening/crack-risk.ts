import { numberText, quantityText, temperatureText } from "../quantity-text";
import { attemptOr } from "../refusal";
import { relation } from "../relation";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { carbonOf } from "../steel/carbon";
import type { Composition } from "../steel/composition";
import type { Steel } from "../steel/steel";
import { wordAsked } from "../word-list";
import { airHardeningMm } from "./air-hardening";
import { criticalPoints } from "./critical-points";
import { publishedTreatment } from "./heat-treatment";
import { findQuench, type QuenchMedium } from "./quench-media";

/** How much a quench is to be feared, the least first. */
export const CRACK_RANKS = ["low", "raised", "high"] as const;

export type CrackRank = (typeof CRACK_RANKS)[number];

/** Risk of cracks and of warp in a quench, with what speaks for it. */
export interface CrackRisk {
  /** How large the risk is, in a word. */
  readonly rank: CrackRank;
  /** In words, the weightiest first; empty where nothing speaks against the quench. */
  readonly reasons: readonly string[];
}

/** What is said with every such rank. */
export const NO_CRITERION = "no accepted criterion exists";

/** Proneness to quench cracks. */
export const QUENCH_CRACK = relation({
  title: "What makes a steel prone to crack in the quench",
  source: "quench-crack-recalled",
  locator:
    "water: over 0.40 % C, martensite start below 300 °C (572 °F), C + Mn/5 + Mo/5 + Cr/10 + Ni/50 over 0.525 (Kunitake and Sugisawa)",
  evidence: "compiled",
  inputs: {},
  output: { label: "crack and warp risk", unit: "" },
  error: {
    size: null,
    unit: "",
    kind: `${NO_CRITERION}: coarse grain, sharp corners and a late temper weigh as much`,
  },
  note: "high: a steel that hardens in a slower bath. raised: one of the figures is passed, or the blade is long and thin (common practice).",
});

const WATER = { carbon: 0.4, startC: 300, equivalent: 0.525 };
/** Longer than this many thicknesses a blade is likely to bend in a liquid: common practice, no source. */
const SLENDER = 150;

/** Carbon equivalent of Kunitake and Sugisawa [mass %], for quench cracks in water. */
export function crackEquivalent(c: Composition, carbon: number): number {
  return carbon + c.Mn / 5 + c.Mo / 5 + c.Cr / 10 + c.Ni / 50;
}

/** Above any of these a steel hardens in oil, and water is harsher than it needs [mass %]. */
const OIL_HARDENING = { Cr: 0.3, Mo: 0.1, Mn: 1.3, Si: 1, Ni: 1, W: 0.3 } as const;

function hardensInOil({ composition }: Steel): boolean {
  return Object.entries(OIL_HARDENING).some(
    ([element, from]) => composition[element as keyof typeof OIL_HARDENING] >= from,
  );
}

function reasonsInWater(steel: Steel): string[] {
  const carbon = attemptOr(undefined, () => carbonOf(steel));
  if (carbon === undefined) return ["its carbon is not known"];
  const start = attemptOr(null, () => criticalPoints(steel).ms);
  const equivalent = crackEquivalent(steel.composition, carbon);
  return [
    carbon > WATER.carbon ? quantityText(carbon, "% C") : "",
    start !== null && start < WATER.startC ? `martensite starts at ${temperatureText(start)}` : "",
    equivalent > WATER.equivalent ? `carbon equivalent ${numberText(Number(equivalent.toFixed(2)))}` : "",
  ].filter((reason) => reason !== "");
}

function inWater(steel: Steel): CrackRisk {
  const reasons = reasonsInWater(steel);
  if (hardensInOil(steel)) return { rank: "high", reasons: ["it hardens in oil", ...reasons] };
  return { rank: reasons.length === 0 ? "low" : "raised", reasons };
}

function inOil(steel: Steel): CrackRisk {
  const printed = publishedTreatment(steel)?.quench ?? "";
  const isHarsh = airHardeningMm(steel) !== undefined && !printed.includes("oil");
  return isHarsh ? { rank: "raised", reasons: ["it hardens in air"] } : { rank: "low", reasons: [] };
}

function bySteel(steel: Steel, { kind }: QuenchMedium): CrackRisk {
  switch (kind) {
    case "water":
      return inWater(steel);
    case "polymer": {
      const { rank, reasons } = inWater(steel);
      return rank === "low"
        ? { rank, reasons }
        : { rank: "raised", reasons: ["polymer may cool like water", ...reasons] };
    }
    case "oil":
      return inOil(steel);
    default:
      return { rank: "low", reasons: [] };
  }
}

/** A blade as far as it bears on warp, mm. */
export interface Slenderness {
  /** Of the blade, above 0 [mm]. */
  readonly length?: number | undefined;
  /** At its thickest, above 0 [mm]. */
  readonly thickness?: number | undefined;
}

const isLiquid = ({ kind }: QuenchMedium) => kind === "water" || kind === "oil" || kind === "polymer";

/**
 * Risk that a blade cracks or warps in a quench, ranked by what is known to matter. No accepted
 * criterion exists: the rank orders cautions and predicts no blade.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param quench - One of `QUENCH_MEDIA`, or a word for it.
 * @param blade - Length and thickness [mm], where known.
 * @returns A rank and its reasons.
 * Limits: none are checked. Error and source: {@link QUENCH_CRACK}.
 */
export function crackRisk(
  steel: SteelAsked,
  quench: QuenchMedium | string,
  { length, thickness }: Slenderness = {},
): CrackRisk {
  steel = steelAsked(steel);
  const medium = wordAsked(quench, findQuench);
  const { rank, reasons } = bySteel(steel, medium);
  const isSlender = length !== undefined && thickness !== undefined && length > SLENDER * thickness;
  if (!isSlender || !isLiquid(medium)) return { rank, reasons };
  const bends = `${numberText(Math.round(length / thickness))} times as long as thick: it may bend`;
  return { rank: rank === "low" ? "raised" : rank, reasons: [...reasons, bends] };
}
