import { type Hardening, hardens } from "../hardening/hardens";
import { quenchedHardness } from "../hardening/quenched";
import { asSentence } from "../quantity-text";
import { attempt, attemptOr, NotAvailable } from "../refusal";
import { totalHours } from "../tempering/hollomon-jaffe";
import { isOutOfReach, type TemperReach, temperReach } from "../tempering/reach";
import { slackOf } from "../tempering/section-effect";
import { temperPlan } from "../tempering/temper-plan";
import { readingShift } from "../tempering/tempered";
import { temperedRange } from "../tempering/tempered-range";
import { temperModel } from "../tempering/tempering-model";
import { type BandTemper, bandTemper } from "./band-temper";
import { ranked } from "./caution";
import { chanceInBand, type HardnessEstimate } from "./chance";
import { hardeningCautions, hardnessCautions } from "./hardness-cautions";
import { nextStep } from "./next-step";
import { quenchCautions } from "./quench-cautions";
import type { BladeQuestion, BladeStory } from "./question";
import { type BladeStatus, LIKELY_CHANCE, statusOf } from "./status";
import { steelCautions } from "./steel-cautions";
import { impliedBy, temperCautions } from "./temper-cautions";

/** Where only the edge or the bit has to be hard, the thickness of the whole blade does not bear on it. */
function sectionJudged({ use, thickness }: BladeQuestion): number | undefined {
  return use === undefined || use.part === "whole" ? thickness : undefined;
}

function softened({ word }: Hardening): boolean {
  return word === "does not harden" || word === "does not harden through";
}

function reachOf({ steel, treatment }: BladeQuestion): TemperReach | NotAvailable {
  return attempt(() => {
    const model = temperModel(steel, treatment.hardenC);
    const hours = totalHours(treatment.hours, treatment.cycles);
    return temperReach(model, hours, readingShift(model, treatment.known, hours));
  }, NotAvailable);
}

interface Expected {
  readonly temperC: number;
  readonly estimate: HardnessEstimate;
  readonly basis: string;
}

/** The temper of the question, and what it is expected to give. */
function expectedOf(question: BladeQuestion, best: BandTemper | undefined): Expected | undefined {
  const { steel, treatment, target, temperC, quench } = question;
  const chosen = temperC ?? (target === undefined ? best?.celsius : plannedFor(question, target));
  if (chosen === undefined) return undefined;
  const section = { quench, thicknessMm: sectionJudged(question) };
  const { low, likely, high, basis } = temperedRange(steel, chosen, treatment, section);
  return { temperC: chosen, estimate: { low, likely, high }, basis };
}

/** The temper for a target as TEMPER_PLAN has it, whole °C; of two the cooler. */
function plannedFor({ steel, treatment }: BladeQuestion, target: number): number {
  const { likelyC, caution } = temperPlan(steel, target, treatment);
  if (likelyC === null) throw new NotAvailable(caution);
  return Math.round(likelyC);
}

function readingOf({ reading }: BladeQuestion): HardnessEstimate | undefined {
  if (reading === undefined) return undefined;
  const { low, high } = reading;
  return { low, likely: (low + high) / 2, high };
}

interface Facts {
  readonly hardening: Hardening;
  readonly reach: TemperReach | undefined;
  readonly estimate: HardnessEstimate | undefined;
  /** What the temper leads to expect where a reading is given as well. */
  readonly expected: HardnessEstimate | undefined;
}

interface Judged {
  readonly status: BladeStatus | "";
  readonly chance: number | undefined;
}

/** Whether a target, a reading or the whole band lies where no temper leads. */
function isBeyond(question: BladeQuestion, { reach, estimate }: Facts): boolean {
  const { use, target } = question;
  if (reach === undefined || use === undefined) return false;
  if (question.reading !== undefined) return estimate !== undefined && isOutOfReach(reach, estimate.likely);
  if (target !== undefined) return target < reach.lowest || target > reach.highest;
  return use.low > reach.highest || use.high < reach.lowest;
}

function judged(question: BladeQuestion, facts: Facts): Judged {
  const { use } = question;
  const { hardening, estimate, expected } = facts;
  if (use === undefined) return { status: "", chance: undefined };
  if (softened(hardening)) return { status: "does not harden", chance: 0 };
  if (isBeyond(question, facts)) return { status: "out of reach", chance: 0 };
  if (estimate === undefined) return { status: "not known", chance: undefined };
  const chance = chanceInBand(use, estimate);
  if (expected === undefined || !disagree(estimate, expected)) {
    return { status: statusOf(use, estimate.likely, chance), chance };
  }
  const least = Math.min(chance, chanceInBand(use, expected), LIKELY_CHANCE - 0.01);
  return { status: "uncertain", chance: least };
}

/** Whether a reading lies outside what its temper leads to expect. */
function disagree(reading: HardnessEstimate, expected: HardnessEstimate): boolean {
  return reading.likely < expected.low - 1 || reading.likely > expected.high + 1;
}

/** The temper that cautions speak of: the one of the question, or the one that the hardness stands for. */
function namedTemper(
  question: BladeQuestion,
  temperC: number | undefined,
  estimate: HardnessEstimate | undefined,
) {
  if (temperC !== undefined) return { celsius: temperC, how: "" };
  if (question.reading === undefined || estimate === undefined) return undefined;
  const { steel, treatment } = question;
  const plan = attempt(() => temperPlan(steel, estimate.likely, treatment), NotAvailable);
  if (plan instanceof NotAvailable || plan.likelyC === null) return undefined;
  return {
    celsius: plan.likelyC,
    how: impliedBy(estimate.likely, totalHours(treatment.hours, treatment.cycles)),
  };
}

/**
 * Judges a blade: whether it hardens, what it can reach, the chance of landing in the band of its use, what
 * to be wary of and what to do next. It never calls a blade safe.
 *
 * @param question - What is known; nothing but the steel is needed.
 * @returns Whatever is not known stands as undefined or "not known"; only a malformed figure is refused.
 * @throws InvalidValue for a malformed target or known reading.
 */
// biome-ignore lint/complexity/noExcessiveCognitiveComplexity: split in the next commit
export function bladeStory(question: BladeQuestion): BladeStory {
  const { steel, use, quench, treatment, temperC, target } = question;
  const hardening = hardens(steel, { quench, thicknessMm: sectionJudged(question) });
  const isSoft = softened(hardening);
  const reached = isSoft ? new NotAvailable(hardening.sentence) : reachOf(question);
  const best =
    use === undefined || isSoft
      ? undefined
      : attemptOr(undefined, () => bandTemper({ use, steel, treatment, lower: slackOf(hardening.word) }));
  const wanted = question.reading === undefined || temperC !== undefined;
  const found =
    isSoft || !wanted
      ? undefined
      : reached instanceof NotAvailable
        ? reached
        : attempt(() => expectedOf(question, best), NotAvailable);
  const expected = found instanceof NotAvailable ? undefined : found;
  const reach = reached instanceof NotAvailable ? undefined : reached;
  const estimate = readingOf(question) ?? expected?.estimate;
  const facts: Facts = {
    hardening,
    reach,
    estimate,
    expected: question.reading === undefined ? undefined : expected?.estimate,
  };
  const { status, chance } = judged(question, facts);
  const named = isSoft ? undefined : namedTemper(question, temperC ?? expected?.temperC, estimate);
  const story = {
    hardening,
    asQuenched: isSoft
      ? undefined
      : attemptOr(undefined, () => quenchedHardness(steel, treatment.hardenC).hrc),
    reach,
    temperC: temperC ?? expected?.temperC,
    estimate,
    basis: expected?.basis ?? "",
    missing:
      isSoft && question.reading === undefined
        ? new NotAvailable(asSentence(hardening.sentence))
        : missingOf(found),
    chance,
    status,
    best,
    isForBand: question.reading === undefined && temperC === undefined && target === undefined,
  };
  const cautions = ranked([
    ...hardeningCautions(question, hardening),
    ...hardnessCautions(question, story, facts.expected),
    ...(use === undefined ? [] : steelCautions({ use, steel, length: question.length })),
    ...(named === undefined ? [] : temperCautions(use, steel, named)),
    ...(isSoft ? [] : quenchCautions(steel, quench)),
  ]);
  return { ...story, cautions, next: nextStep(question, story) };
}

function missingOf(found: Expected | NotAvailable | undefined): NotAvailable | undefined {
  return found instanceof NotAvailable ? found : undefined;
}
