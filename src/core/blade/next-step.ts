import { softBySteel } from "../hardening/hardens";
import { bathOf, maxSection } from "../hardening/max-section";
import { findQuench } from "../hardening/quench-media";
import { quantityText, temperatureText } from "../quantity-text";
import { attemptOr } from "../refusal";
import { mustCoolFast } from "../tempering/embrittlement";
import { chanceText } from "./chance";
import type { BladeQuestion, BladeStory } from "./question";

type Told = Omit<BladeStory, "cautions" | "next">;

/** A coupon that raises the chance by less than this is not worth its trouble. */
const WORTH_A_COUPON = 0.03;

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

function reachInstead({ use, target, reading }: BladeQuestion, { reach }: Told): string {
  if (reach === undefined || use === undefined) return "Take another steel.";
  const wanted = target ?? (reading === undefined ? use.aim : (reading.low + reading.high) / 2);
  if (wanted > reach.highest) {
    const figure = quantityText(Math.floor(reach.highest), "HRC");
    return reach.highest >= use.low
      ? `Aim no higher than ${figure}, or take a steel with more carbon.`
      : "Take a steel with more carbon: no temper of this one is hard enough.";
  }
  return reach.lowest <= use.high
    ? `Aim no lower than ${quantityText(Math.ceil(reach.lowest), "HRC")}.`
    : "Take a steel that tempers softer: no published temper of this one is soft enough.";
}

function temperText(question: BladeQuestion, celsius: number): string {
  const { hours, cycles } = question.treatment;
  const fast = mustCoolFast(question.steel, celsius) ? ", cool fast from it" : "";
  return `${cycles} × ${quantityText(hours, "h")} at ${temperatureText(celsius)}${fast}`;
}

function temperedSofter({ best }: Told): string {
  if (best === undefined) return "Temper further before the finish grind, in small steps, and read again.";
  return `Temper further before the finish grind, up to ${temperatureText(best.celsius)}, and read again.`;
}

function hardenAgain(question: BladeQuestion, { best }: Told): string {
  const temper = best === undefined ? "" : `, then temper ${temperText(question, best.celsius)}`;
  return `Harden again${temper}: a temper only softens.`;
}

/** What a coupon is worth, in words; empty where it is worth nothing. */
function couponText({ chance, best }: Told): string {
  const after = best?.withCoupon;
  if (chance === undefined || after === undefined || after < chance + WORTH_A_COUPON) return "";
  return `; one coupon would raise the chance from ${chanceText(chance)} to ${chanceText(after)}`;
}

function readAgain({ estimate }: Told, { reading, use }: BladeQuestion): string {
  if (reading === undefined || use === undefined || estimate === undefined)
    return "Read a coupon of this heat.";
  if (reading.high - reading.low > 2)
    return "Test a coupon of this heat: the estimate is wider than the band can hold.";
  return "Read again on a ground spot, three readings at least; in doubt take the softer side.";
}

function flatText({ best, isForBand }: Told): string {
  if (best?.flat === undefined || !isForBand) return "";
  const [from, to] = best.flat;
  return `; the curve is flat from ${temperatureText(from)} to ${temperatureText(to)}`;
}

function avoidedText({ best, isForBand }: Told): string {
  const avoided = best?.avoided;
  if (avoided === undefined || !isForBand) return "";
  return `; ${temperatureText(avoided.celsius)} would give ${chanceText(avoided.chance)}, but is brittle`;
}

/** What to do with a planned temper. */
function trial(question: BladeQuestion, story: Told): string {
  const { temperC, estimate } = story;
  if (temperC === undefined || estimate === undefined) return "Test a coupon of this heat before the run.";
  const expected = `expect ${span(estimate.low, estimate.high)}`;
  const rest = flatText(story) || couponText(story) || avoidedText(story);
  return `Temper one, ${temperText(question, temperC)}, ${expected}${rest}.`;
}

/** What to do with a blade that has been read. */
function afterReading(question: BladeQuestion, story: Told): string {
  switch (story.status) {
    case "too hard":
      return temperedSofter(story);
    case "too soft":
      return hardenAgain(question, story);
    case "uncertain":
      return readAgain(story, question);
    default:
      return "Go on, and read each blade of the lot.";
  }
}

/**
 * What to do next with a blade, in one sentence of at most 40 words.
 *
 * @param question - What is known of the blade.
 * @param story - What was found.
 */
export function nextStep(question: BladeQuestion, story: Told): string {
  switch (story.status) {
    case "does not harden":
      return hardenInstead(question);
    case "out of reach":
      return reachInstead(question, story);
    case "not known":
      return `Test a coupon: harden and temper a piece of ${question.steel.name} and read it.`;
    case "":
      return story.estimate === undefined ? "" : trial(question, story);
    default:
      return question.reading === undefined ? trial(question, story) : afterReading(question, story);
  }
}
