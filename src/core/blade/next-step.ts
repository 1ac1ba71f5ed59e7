import { withinWords } from "../cell-text";
import { softBySteel } from "../hardening/hardens";
import { bathOf, maxSection } from "../hardening/max-section";
import { findQuench } from "../hardening/quench-media";
import { quantityText, temperatureText } from "../quantity-text";
import { attemptOr } from "../refusal";
import { isNearBrittle, mustCoolFast } from "../tempering/embrittlement";
import { USUAL_CYCLES, USUAL_HOURS } from "../tempering/hollomon-jaffe";
import type { TemperReach } from "../tempering/reach";
import type { BandTemper } from "./band-temper";
import type { Use } from "./bands";
import type { Caution } from "./caution";
import { chanceText } from "./chance";
import type { BladeQuestion, BladeStory } from "./question";
import { LIKELY_CHANCE } from "./status";

type Told = Omit<BladeStory, "cautions" | "next">;

/** A coupon that raises the chance by less than this is not worth its trouble. */
const WORTH_A_COUPON = 0.03;
/** A reading spread wider than this is an estimate, HRC. */
const ESTIMATE_HRC = 2;

function span(low: number, high: number): string {
  return `${Math.round(low)} to ${quantityText(Math.round(high), "HRC")}`;
}

function hardenInstead({ steel, quench, thickness }: BladeQuestion): string {
  if (softBySteel(steel) !== "") return `Take a steel that hardens: quenching does not harden ${steel.name}.`;
  const oil = findQuench("fast oil");
  const mm = attemptOr(0, () => maxSection(steel, bathOf(oil)).fullyHardMm);
  if (thickness === undefined || mm >= thickness) {
    const to = mm > 0 ? `, which hardens about ${mm.toFixed(mm < 10 ? 1 : 0)} mm` : "";
    return `Quench ${steel.name} in ${quench?.word === oil.word ? "a faster bath" : oil.word}${to}.`;
  }
  return "Grind thinner before the quench, or take a steel that hardens deeper.";
}

/** Whether no temper leads into the band, the stated error counted. */
export function isBandBeyond({ low, high }: Use, reach: TemperReach): boolean {
  return isBandTooHard(low, reach) || high < reach.lowest - reach.lowestError;
}

const isBandTooHard = (low: number, reach: TemperReach) => low > reach.highest + reach.highestError;

const TOO_SOFT = "Take a steel with more carbon: no temper of this one is hard enough.";

function reachInstead({ use, target, reading }: BladeQuestion, { reach }: Told): string {
  if (reach === undefined || use === undefined) return "Take another steel.";
  if (isBandTooHard(use.low, reach)) return TOO_SOFT;
  const wanted = target ?? (reading === undefined ? use.aim : (reading.low + reading.high) / 2);
  if (wanted > reach.highest) {
    const figure = quantityText(Math.floor(reach.highest), "HRC");
    return reach.highest >= use.low
      ? `Aim no higher than ${figure}, or take a steel with more carbon.`
      : TOO_SOFT;
  }
  return reach.lowest <= use.high
    ? `Aim no lower than ${quantityText(Math.ceil(reach.lowest), "HRC")}.`
    : "Take a steel that tempers softer: no published temper of this one is soft enough.";
}

function temperText(question: BladeQuestion, celsius: number): string {
  const { hours = USUAL_HOURS, cycles = USUAL_CYCLES } = question.treatment;
  const fast = mustCoolFast(question.steel, celsius) ? ", cool fast from it" : "";
  return `${cycles} × ${quantityText(hours, "h")} at ${temperatureText(celsius)}${fast}`;
}

function temperedSofter({ best }: Told): string {
  if (best === undefined) return "Temper further before the finish grind, in small steps, and read again.";
  return `Temper further before the finish grind, up to ${temperatureText(best.celsius)}, and read again.`;
}

function hardenAgain(question: BladeQuestion, best: BandTemper | undefined, why: string): string {
  const temper = best === undefined ? "" : `, then temper ${temperText(question, best.celsius)}`;
  return `Harden again${temper}: ${why}.`;
}

/** What a coupon is worth, in words; empty where it is worth nothing. */
function couponText({ chance, best }: Told): string {
  const after = best?.withCoupon;
  if (chance === undefined || after === undefined || after < chance + WORTH_A_COUPON) return "";
  return `one coupon would raise the chance from ${chanceText(chance)} to ${chanceText(after)}`;
}

function readAgain({ reading }: BladeQuestion, story: Told): string {
  if (reading === undefined || reading.high - reading.low <= ESTIMATE_HRC)
    return "Read again on a ground spot, three readings at least; in doubt take the softer side.";
  const worth = couponText(story);
  return `Test a coupon of this heat: ${worth === "" ? "the estimate is wider than the band can hold" : worth}.`;
}

function flatText({ best, isForBand }: Told): string {
  if (best?.flat === undefined || !isForBand) return "";
  const [from, to] = best.flat;
  return `any from ${temperatureText(from)} to ${temperatureText(to)} gives it within the error`;
}

function avoidedText({ best, isForBand }: Told): string {
  const avoided = best?.avoided;
  if (avoided === undefined || !isForBand) return "";
  return `${temperatureText(avoided.celsius)} would give ${chanceText(avoided.chance)}, but is brittle`;
}

/** Whether a planned temper comes out soft because the brittle range keeps it from being lower. */
export function isKeptSoft({ status, best, isForBand }: Told): boolean {
  if (best?.avoided === undefined || !isForBand || best.avoided.celsius >= best.celsius) return false;
  return status === "too soft" || status === "uncertain";
}

const softText = (story: Told) => (isKeptSoft(story) ? ", soft to avoid the brittle range" : "");

/** A temper with a clearly better chance than the one that was chosen; empty where there is none. */
function betterText(question: BladeQuestion, { best, chance }: Told): string {
  const isChosen = question.temperC !== undefined || question.target !== undefined;
  if (!isChosen || best === undefined || chance === undefined) return "";
  if (best.chance < chance + WORTH_A_COUPON) return "";
  return `${temperatureText(best.celsius)} would give the band at ${chanceText(best.chance)}, this ${chanceText(chance)}`;
}

/** What to do with a planned temper. */
function trial(question: BladeQuestion, story: Told): string {
  const { temperC, estimate } = story;
  if (temperC === undefined || estimate === undefined) return "Test a coupon of this heat before the run.";
  const first = `Temper one, ${temperText(question, temperC)}, expect ${span(estimate.low, estimate.high)}${softText(story)}`;
  const better = betterText(question, story);
  // What a coupon is worth counts with the temper set by it: of a temper that is settled it says nothing.
  const parts = better === "" ? [flatText(story), avoidedText(story), couponText(story)] : [better];
  return `${withinWords([first, ...parts])}.`;
}

/** Whether a temper lies in a brittle range of a blade that should stay out of it, and a better one does not. */
function isBrittleHere({ steel, use }: BladeQuestion, temperC: number, instead: number): boolean {
  const struck = use?.service === "impact" || steel.family.endsWith("stainless");
  return struck && isNearBrittle(steel, temperC) && !isNearBrittle(steel, instead);
}

/** The temper with the best chance in place of one in the brittle range, and what is given up for it; empty where there is none. */
function blandInstead(question: BladeQuestion, { best, temperC, chance = 0 }: Told): string {
  const { reading } = question;
  if (best === undefined || temperC === undefined || best.celsius === temperC) return "";
  if (!isBrittleHere(question, temperC, best.celsius)) return "";
  const brittle = `${temperatureText(temperC)} lies in the brittle range`;
  if (reading === undefined && best.chance < LIKELY_CHANCE && chance >= LIKELY_CHANCE) {
    const here = `Temper one, ${temperText(question, temperC)}, chance ${chanceText(chance)} in the brittle range`;
    return `${here}; ${temperatureText(best.celsius)} is tougher, but has ${chanceText(best.chance)}.`;
  }
  if (reading !== undefined && best.celsius < temperC) return hardenAgain(question, best, brittle);
  const on = `${reading === undefined ? "Temper one" : "Temper on"}, ${temperText(question, best.celsius)}`;
  const here = chanceText(best.chance);
  return best.chance < chance
    ? `${on}, chance ${here} and tougher; ${temperatureText(temperC)} has ${chanceText(chance)}, but lies in the brittle range.`
    : `${on}, for a chance of ${here}: ${brittle}.`;
}

function dangerFirst(cautions: readonly Caution[]): string {
  return cautions.find(({ rank, instead }) => rank === "danger" && instead !== "")?.instead ?? "";
}

/** What has to change before anything else is worth doing, by the heaviest caution that says so. */
function changeFirst(question: BladeQuestion, story: Told, cautions: readonly Caution[]): string {
  const danger = dangerFirst(cautions);
  if (danger !== "") return danger;
  const spoilt = cautions.find(({ rank, instead }) => rank === "spoils the blade" && instead !== "");
  return spoilt?.instead ?? blandInstead(question, story);
}

/** What to do with a blade that has been read. */
function afterReading(question: BladeQuestion, story: Told, cautions: readonly Caution[]): string {
  switch (story.status) {
    case "too hard":
      return temperedSofter(story);
    case "too soft":
      return hardenAgain(question, story.best, "a temper only softens");
    case "uncertain":
      return dangerFirst(cautions) || readAgain(question, story);
    default:
      return changeFirst(question, story, cautions) || "Go on, and read each blade of the lot.";
  }
}

/**
 * What to do next with a blade, in one sentence of at most 40 words.
 *
 * @param question - What is known of the blade.
 * @param story - What was found.
 * @param cautions - What to be wary of, the heaviest first.
 */
export function nextStep(question: BladeQuestion, story: Told, cautions: readonly Caution[]): string {
  switch (story.status) {
    case "does not harden":
      return hardenInstead(question);
    case "out of reach":
      return reachInstead(question, story);
    case "not known":
      if (story.missing === undefined)
        return "Read the blade, or give its temper: nothing else tells its hardness.";
      return `Test a coupon: harden and temper a piece of ${question.steel.name} and read it.`;
    case "":
      return story.estimate === undefined ? "" : trial(question, story);
    default:
      return question.reading === undefined
        ? changeFirst(question, story, cautions) || trial(question, story)
        : afterReading(question, story, cautions);
  }
}

/** Where the reasons of a next step begin. */
const REASONS = /: |; |, expect |, for a chance /;

/** What to do without the reasons, for a narrow column: a next step as far as its first clause. */
export function nextStepInShort(sentence: string): string {
  return (sentence.split(REASONS)[0] ?? "").replace(/\.$/, "");
}
