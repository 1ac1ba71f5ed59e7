import { RememberedAnswers } from "../remembered-answers";
import { type SteelAsked, steelAsked } from "../steel/asked";
import type { Steel } from "../steel/steel";
import { BROAD_C, HALF_HRC, PLATEAU_C } from "../tempering/temper-plan";
import { largestShift, type Treatment } from "../tempering/tempered";
import { bandHalfWidth, KNOWN_HALF_WIDTH } from "../tempering/tempered-range";
import { wordAsked } from "../word-list";
import {
  type BandTemperQuestion,
  type Candidate,
  candidates,
  chanceOf,
  type Point,
  type Tempers,
  tempersOf,
} from "./band-candidates";
import { findUse, type Use } from "./bands";
import { NINETY } from "./chance";
import { missOf, NEAR_MISS_HRC, shownTooHardFrom } from "./status";

/** The temper with the best chance of a band. */
export interface BandTemper {
  /** Whole temper [°C]. */
  readonly celsius: number;
  /** That a careful reading lies in the band, 0 to 1 [-]. */
  readonly chance: number;
  /** Best temper [°C] in a brittle range that was avoided, where it has a better chance [-]. */
  readonly avoided: { readonly celsius: number; readonly chance: number } | undefined;
  /** Coolest and hottest temper [°C] between which the hardness hardly moves; undefined on a slope. */
  readonly flat: readonly [number, number] | undefined;
  /** Chance, 0 to 1 [-], once a coupon of this heat has set the temper; undefined where none helps. */
  readonly withCoupon: number | undefined;
}

/** The same as a program may ask it. */
export interface BandTemperAsked {
  /** Use, or a word for it. */
  readonly use: Use | string;
  /** Grade, its designation, or the text of an analysis. */
  readonly steel: SteelAsked;
  /** Times, cycles and readings of the temper; the usual ones where left out. */
  readonly treatment?: Treatment | undefined;
  /** How much lower the low end lies for a section that hardens in part [HRC]; 0 where left out. */
  readonly lower?: number | undefined;
}

/** Chances nearer than this cannot be told apart. */
const SAME_CHANCE = 0.02;
/** What is given up of the chance on a flat curve for a cooler temper: it can be raised but not taken back. */
const LEAN_CHANCE = 0.1;

/** Struck blades, and stainless ones for their rust resistance, stay out of the brittle ranges. */
function avoidsBrittle({ use, steel }: BandTemperQuestion): boolean {
  return use.service === "impact" || steel.family.endsWith("stainless");
}

/** From here a blade is harder than its use allows [HRC]. One that is struck breaks there, where a softer one bends. */
function tooHardFrom({ use }: BandTemperQuestion): number {
  return use.service === "impact" ? shownTooHardFrom(use) : Number.POSITIVE_INFINITY;
}

/** Chances under this are none, for a wide error makes them as much as a near miss: of such tempers the one nearest to the band is the best. */
const NO_CHANCE = 0.05;

function best({ low, high }: Use, from: readonly Candidate[]): Candidate {
  const off = ({ hrc }: Candidate) => Math.abs(hrc - (low + high) / 2);
  const top = from.reduce((most, each) => (each.chance > most.chance ? each : most));
  if (top.chance > NO_CHANCE) return top;
  return from.reduce((nearest, each) => (off(each) < off(nearest) ? each : nearest));
}

/** The tempers about one that give its hardness within a number of HRC. */
function within(hrc: number, top: Candidate, from: readonly Candidate[]): readonly Candidate[] {
  const near = (each: Candidate) => Math.abs(each.hrc - top.hrc) <= hrc;
  const at = from.indexOf(top);
  let [first, last] = [at, at];
  while (first > 0 && near(from[first - 1] as Candidate)) first--;
  while (last < from.length - 1 && near(from[last + 1] as Candidate)) last++;
  return from.slice(first, last + 1);
}

function widthOf(level: readonly Candidate[]): number {
  return (level[level.length - 1]?.celsius ?? 0) - (level[0]?.celsius ?? 0);
}

/** The tempers between which the curve is too flat for a single answer, as TEMPER_PLAN counts a plateau. */
function flatAbout(top: Candidate, from: readonly Candidate[]): readonly Candidate[] | undefined {
  const level = within(HALF_HRC, top, from);
  if (widthOf(level) >= PLATEAU_C) return level;
  const broad = within(top.halfWidth, top, from);
  return widthOf(broad) >= BROAD_C ? broad : undefined;
}

/** Places of a standard normal distribution, evenly apart, for the mean over it. */
const PLACES = Array.from({ length: 41 }, (_, i) => (i - 20) * 0.17);
const WEIGHTS = PLACES.map((z) => Math.exp((-z * z) / 2));
const ALL_WEIGHT = WEIGHTS.reduce((sum, weight) => sum + weight, 0);

/** The hardness to aim at for the best chance: the middle of the band, higher where the low end may lie lower. */
function aimOf({ use, lower }: BandTemperQuestion): number {
  const middle = (use.low + use.high) / 2;
  const steps = Array.from({ length: Math.round(lower) + 1 }, (_, i) => middle + i / 2);
  const chance = (hrc: number) => chanceOf(use, hrc, KNOWN_HALF_WIDTH, lower);
  return steps.reduce((best, each) => (chance(each) > chance(best) ? each : best));
}

/** Of tempers the one whose hardness is nearest to a wanted one. */
function nearestOf(from: readonly Candidate[], wanted: number): Candidate {
  let nearest = from[0] as Candidate;
  for (const each of from) {
    if (Math.abs(each.hrc - wanted) < Math.abs(nearest.hrc - wanted)) nearest = each;
  }
  return nearest;
}

/**
 * Mean chance after a coupon: it tells where this heat lies, which leaves the half-width of a known
 * reading, and the temper is then set anew among those that the use allows. One that reads further off than may be is
 * hardened again: no chance.
 */
function couponChance(
  question: BandTemperQuestion,
  { model, hours }: Tempers,
  top: Candidate,
  bland: readonly Candidate[],
) {
  const learnt = top.halfWidth ** 2 - KNOWN_HALF_WIDTH ** 2;
  if (learnt <= 0) return undefined;
  const sd = Math.sqrt(learnt) / NINETY;
  const aim = aimOf(question);
  const largest = largestShift(model, top.celsius, hours);
  const chance = PLACES.reduce((sum, place, i) => {
    const shift = place * sd;
    if (Math.abs(shift) > largest) return sum;
    const nearest = (from: readonly Candidate[]) => nearestOf(from, aim - shift);
    const { hrc, celsius } = nearest(allowedFor(question, bland, nearest, shift));
    const half = bandHalfWidth(model, celsius, hours, top);
    const weight = (WEIGHTS[i] as number) / ALL_WEIGHT;
    return sum + weight * chanceOf(question.use, hrc + shift, half, question.lower);
  }, 0);
  return chance > top.chance ? chance : undefined;
}

/** Those that pass a test; all where none does. */
function preferred(from: readonly Candidate[], passes: (each: Candidate) => boolean): readonly Candidate[] {
  const passed = from.filter(passes);
  return passed.length > 0 ? passed : from;
}

/**
 * The tempers that a use allows. A struck blade is no harder than its band, since too hard it breaks where
 * softer it bends; but where every softer temper misses the band by more than a harder one that is nearly
 * inside, the harder one is the smaller fault of a short blade: an edge too soft rolls. A sword keeps to the soft
 * side, since a long blade is loaded more and a piece of it flies. Common practice, no source.
 *
 * @param bestOf - The best of those that are soft enough.
 * @param shift - How far a coupon of the heat will have read above the hardness that the tempers have here [HRC].
 */
function allowedFor(
  question: BandTemperQuestion,
  from: readonly Candidate[],
  bestOf: (soft: readonly Candidate[]) => Candidate,
  shift = 0,
): readonly Candidate[] {
  const { use } = question;
  const limit = tooHardFrom(question) - shift;
  if (limit === Number.POSITIVE_INFINITY) return from;
  const missBy = ({ hrc }: Point) => missOf(use, hrc + shift);
  const soft = preferred(from, ({ hrc }) => hrc < limit);
  if (use.group === "sword") return soft;
  const softest = missBy(bestOf(soft));
  const near = from.filter(
    (each) => each.hrc >= limit && missBy(each) <= Math.min(NEAR_MISS_HRC, -softest - 1),
  );
  return near.length > 0 ? near : soft;
}

/** Answers remembered for one steel: every line of a run and every hardness of a table asks the same again. */
const remembered = new RememberedAnswers<Steel, BandTemper>(50);

/** All that an answer depends on besides the steel. */
function keyOf({ use, treatment, lower }: BandTemperQuestion): string {
  const { low, high, service, group } = use;
  const { hours, cycles, known, hardenC, quenchToC } = treatment;
  return [
    low,
    high,
    service,
    group,
    lower,
    hours,
    cycles,
    known?.celsius,
    known?.hrc,
    hardenC,
    quenchToC,
  ].join("|");
}

/**
 * The temper that gives the best chance of the band of a use. Struck blades stay out of the brittle
 * ranges and, where a temper leaves the choice, no harder than the band, or up to 2 HRC harder where a short blade's
 * softer tempers miss it by more; where the curve is flat the answer leans to the cool side.
 *
 * @param asked - Use, steel, treatment, and how much lower the low end lies [HRC]; 0 where left out.
 * @returns Temper [°C] and chance 0 to 1.
 * @throws NotAvailable where no published curve or formula covers the steel and the time.
 * Error and source: those of `temperedRange`, and {@link TESTER_UNCERTAINTY}.
 */
export function bandTemper(asked: BandTemperAsked): BandTemper {
  const { treatment: given = {}, lower = 0 } = asked;
  const question: BandTemperQuestion = {
    use: wordAsked(asked.use, findUse),
    steel: steelAsked(asked.steel),
    treatment: given,
    lower,
  };
  return remembered.answer(question.steel, keyOf(question), () => bestTemper(question));
}

function bestTemper(question: BandTemperQuestion): BandTemper {
  const { steel, treatment, use } = question;
  const tempers = tempersOf(steel, treatment);
  const all = candidates(question, tempers);
  const bland = avoidsBrittle(question) ? preferred(all, ({ isBrittle }) => !isBrittle) : all;
  const bestOf = (from: readonly Candidate[]) => best(use, from);
  const allowed = allowedFor(question, bland, bestOf);
  const top = bestOf(allowed);
  const level = flatAbout(top, allowed);
  const chosen = level?.find(({ chance }) => chance >= top.chance - LEAN_CHANCE) ?? top;
  const whole = bestOf(allowedFor(question, all, bestOf));
  return {
    celsius: chosen.celsius,
    chance: chosen.chance,
    avoided: whole.isBrittle && whole.chance > chosen.chance + SAME_CHANCE ? whole : undefined,
    flat: level && [level[0]?.celsius ?? top.celsius, level[level.length - 1]?.celsius ?? top.celsius],
    withCoupon: treatment.known === undefined ? couponChance(question, tempers, top, bland) : undefined,
  };
}
