import { edgeLoad, rollOrChip } from "../mechanics/edge-load";
import { yieldBand } from "../mechanics/yield";
import { type InParts, toTheEnd } from "../parts";
import { attemptOr } from "../refusal";
import { type SteelAsked, steelAsked } from "../steel/asked";
import type { Steel } from "../steel/steel";
import { toughnessAt } from "../steel/toughness";
import { isUnavoidable } from "../tempering/embrittlement";
import type { Treatment } from "../tempering/tempered";
import { wordAsked } from "../word-list";
import { findUse, type Use } from "./bands";
import { bladeStory } from "./story";

/** What one hardness of a steel gives for a use. */
export interface TradeOff {
  /** Hardness that is weighed [HRC]. */
  readonly hrc: number;
  /** Temper that leads to it [°C]; undefined where none does. */
  readonly temperC: number | undefined;
  /** That a reading lies in the band of the use, aiming at this hardness, 0 to 1 [-]. */
  readonly chance: number | undefined;
  /** Yield strength [MPa]. */
  readonly yieldMPa: number | undefined;
  /** Whether the yield, and with it the edge load, is a lower bound. */
  readonly isBound: boolean;
  /** Side load at which the edge begins to take a set [N/mm]; undefined for a use without an edge angle. */
  readonly edgeLoad: number | undefined;
  /** As published for the steel near this hardness, its test named; empty where nothing is. */
  readonly toughness: string;
  /** What this hardness gives and takes against that of the first row, in words. */
  readonly changes: string;
}

/** Depth from the apex over which a side load is spread where none is told [mm]. */
const CONTACT = 0.1;

function middleAngle({ angleLow, angleHigh }: Use): number | undefined {
  return angleLow === null || angleHigh === null ? undefined : (angleLow + angleHigh) / 2;
}

function edgeLoadAt(use: Use, yieldMPa: number | undefined): number | undefined {
  const angle = middleAngle(use);
  if (angle === undefined || yieldMPa === undefined) return undefined;
  // The load of the first set does not depend on the thickness behind the edge; any that holds the contact serves.
  return attemptOr(undefined, () => edgeLoad({ behind: 1, angle, contact: CONTACT }, yieldMPa).first);
}

type Figures = Omit<TradeOff, "changes">;

function figuresAt(use: Use, steel: Steel, hrc: number, treatment: Treatment): Figures {
  // What every other function says of this steel, aimed at this hardness for this use.
  const story = attemptOr(undefined, () => bladeStory({ use, steel, target: hrc, treatment }));
  const temperC = story?.temperC;
  const strength = temperC === undefined ? undefined : attemptOr(undefined, () => yieldBand(hrc, temperC));
  const yieldMPa = strength?.likely;
  return {
    hrc,
    temperC,
    chance: temperC === undefined ? undefined : story?.chance,
    yieldMPa,
    isBound: strength?.bounded ?? false,
    edgeLoad: edgeLoadAt(use, yieldMPa),
    toughness: toughnessAt(steel, hrc),
  };
}

function against(now: number | undefined, before: number | undefined, what: string): string {
  if (now === undefined || before === undefined || before === 0) return "";
  const percent = Math.round((now / before - 1) * 100);
  return `${what} ${percent > 0 ? "+" : percent < 0 ? "−" : "±"}${Math.abs(percent)} %`;
}

/** @param first - Of the hardness that this one is held against; undefined for that hardness itself. */
function changesOf(steel: Steel, row: Figures, first: Figures | undefined): string {
  if (row.temperC === undefined) return "no temper of this steel leads there";
  const parts = [
    against(row.yieldMPa, first?.yieldMPa, "yield"),
    against(row.edgeLoad, first?.edgeLoad, "edge load"),
    row.isBound ? "yield and edge load are lower bounds" : "",
    isUnavoidable(steel, row.temperC) ? "tempered in its brittle range" : "",
    rollOrChip(row.hrc),
  ];
  return parts.filter((part) => part !== "").join("; ");
}

/**
 * What a few points softer or harder buy with one steel: the chance of the band, strength, what its edge
 * bears, published toughness. The first hardness is the one that the others are held against.
 *
 * @param use - One of `USES`, or a word for it.
 * @param steel - A grade or an analysis, or its name.
 * @param hardnesses - [HRC]
 * @param treatment - Time of one cycle [h], cycles, and what is known of the blade.
 * @returns A row a hardness: temper [°C], chance 0 to 1, yield [MPa], edge load [N/mm]; what no temper leads to says so
 *   and has no figures.
 * @throws NotAvailable for a use or a steel that is not known.
 * Error and source: those of the temper, the yield strength and the wedge.
 */
export function tradeOff(
  use: Use | string,
  steel: SteelAsked,
  hardnesses: readonly number[],
  treatment: Treatment = {},
): readonly TradeOff[] {
  return toTheEnd(tradeOffInParts(use, steel, hardnesses, treatment));
}

/** The same in parts: it may pause after each hardness. */
export function* tradeOffInParts(
  use: Use | string,
  steel: SteelAsked,
  hardnesses: readonly number[],
  treatment: Treatment,
): InParts<readonly TradeOff[]> {
  const asked = wordAsked(use, findUse);
  const of = steelAsked(steel);
  const rows: TradeOff[] = [];
  for (const hrc of hardnesses) {
    const figures = figuresAt(asked, of, hrc, treatment);
    rows.push({ ...figures, changes: changesOf(of, figures, rows[0]) });
    yield;
  }
  return rows;
}
