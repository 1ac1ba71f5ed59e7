import { findQuench } from "../hardening/quench-media";
import { attempt, NotAvailable } from "../refusal";
import { steelAsked } from "../steel/asked";
import { totalHours } from "../tempering/hollomon-jaffe";
import { isBeyondError } from "../tempering/reach";
import { temperPlan } from "../tempering/temper-plan";
import { wordAsked } from "../word-list";
import { bandFor } from "./band-by-steel";
import { findUse, type Use } from "./bands";
import { type Caution, ranked } from "./caution";
import { chanceInBand, type HardnessEstimate } from "./chance";
import { type BladeFacts, bladeFacts } from "./facts";
import { bandCautions, hardeningCautions, hardnessCautions } from "./hardness-cautions";
import { isBandBeyond, nextStep } from "./next-step";
import { quenchCautions } from "./quench-cautions";
import type { BladeAsked, BladeQuestion, BladeStory } from "./question";
import { type BladeStatus, LIKELY_CHANCE, statusOf } from "./status";
import { steelCautions } from "./steel-cautions";
import { impliedBy, type NamedTemper, temperCautions } from "./temper-cautions";

interface Judged {
  readonly status: BladeStatus | "";
  readonly chance: number | undefined;
}

/** Whether a reading, a target or the whole band lies where no temper leads, the stated error counted. */
function isBeyond(question: BladeQuestion, { reach, reading }: BladeFacts): boolean {
  const { use, target } = question;
  if (reach === undefined || use === undefined) return false;
  if (reading !== undefined) return isBeyondError(reach, reading.likely);
  return isBandBeyond(use, reach) || (target !== undefined && isBeyondError(reach, target));
}

/** Whether a reading lies outside what its temper leads to expect. */
function disagree(reading: HardnessEstimate, expected: HardnessEstimate): boolean {
  return reading.likely < expected.low - 1 || reading.likely > expected.high + 1;
}

/** A hardness that the steel hardly gives counts no more than what it does give. */
function chanceOf(use: Use, estimate: HardnessEstimate, { nearest }: BladeFacts): number {
  const chance = chanceInBand(use, estimate);
  return nearest === undefined ? chance : Math.min(chance, chanceInBand(use, nearest));
}

function judged(question: BladeQuestion, facts: BladeFacts): Judged {
  const { use } = question;
  if (use === undefined) return { status: "", chance: undefined };
  if (facts.staysSoft) return { status: "does not harden", chance: 0 };
  if (isBeyond(question, facts)) return { status: "out of reach", chance: 0 };
  const { reading, expected } = facts;
  const estimate = reading ?? expected?.estimate;
  if (estimate === undefined) return { status: "not known", chance: undefined };
  const chance = chanceOf(use, estimate, facts);
  if (reading === undefined || expected === undefined || !disagree(reading, expected.estimate)) {
    return { status: statusOf(use, estimate.likely, chance), chance };
  }
  const least = Math.min(chance, chanceInBand(use, expected.estimate), LIKELY_CHANCE - 0.01);
  return { status: "uncertain", chance: least };
}

/** The temper that a reading stands for, where none was told. */
function impliedTemper({ steel, treatment }: BladeQuestion, hrc: number): NamedTemper | undefined {
  const plan = attempt(() => temperPlan(steel, hrc, treatment), NotAvailable);
  if (plan instanceof NotAvailable || plan.likelyC === null) return undefined;
  return { celsius: plan.likelyC, how: impliedBy(hrc, totalHours(treatment.hours, treatment.cycles)) };
}

/** The temper that cautions speak of: the one of the question, or the one that the hardness stands for. */
function namedTemper(question: BladeQuestion, facts: BladeFacts): NamedTemper | undefined {
  if (facts.staysSoft) return undefined;
  const temperC = question.temperC ?? facts.expected?.temperC;
  if (temperC !== undefined) return { celsius: temperC, how: "" };
  return facts.reading === undefined ? undefined : impliedTemper(question, facts.reading.likely);
}

type Told = Omit<BladeStory, "cautions" | "next">;

function told(question: BladeQuestion, facts: BladeFacts): Told {
  const { hardening, asQuenched, reach, best, plan, expected, reading, missing } = facts;
  const { temperC, target, asIs } = question;
  return {
    hardening,
    asQuenched,
    reach,
    best,
    missing,
    temperC: temperC ?? expected?.temperC,
    estimate: reading ?? expected?.estimate,
    basis: expected?.basis ?? "",
    taken: expected?.taken ?? "",
    plan,
    isForBand: reading === undefined && temperC === undefined && target === undefined && asIs !== true,
    ...judged(question, facts),
  };
}

function cautionsOf(question: BladeQuestion, facts: BladeFacts, story: Told): readonly Caution[] {
  const { use, steel, length, quench } = question;
  const named = namedTemper(question, facts);
  // A reading is held against what its temper leads to expect.
  const expected = facts.reading === undefined ? undefined : facts.expected?.estimate;
  return ranked([
    ...hardeningCautions(question, facts.hardening),
    ...hardnessCautions(question, story, expected),
    ...(use === undefined ? [] : steelCautions({ use, steel, length })),
    ...(named === undefined ? [] : temperCautions(use, steel, named)),
    ...(facts.staysSoft ? [] : quenchCautions(steel, quench, question)),
    ...bandCautions(question),
  ]);
}

/**
 * Judges a blade: whether it hardens, what it can reach, the chance of landing in the band of its use, what
 * to be wary of and what to do next. It never calls a blade safe.
 *
 * @param asked - What is known; nothing but the steel is needed. Length and thickness [mm], hardness [HRC], temper [°C], time [h].
 * @returns Hardness [HRC], temper [°C], chance 0 to 1. Whatever is not known stands as undefined or "not known";
 *   only a malformed figure is refused, and a name that is not known.
 * @throws InvalidValue for a malformed target or known reading; NotAvailable for a name that is not known.
 * Error and source: those of `temperedRange` and `hardens`, and {@link TESTER_UNCERTAINTY}.
 */
export function bladeStory(asked: BladeAsked): BladeStory {
  const { use, quench, treatment = {} } = asked;
  const steel = steelAsked(asked.steel);
  const question: BladeQuestion = {
    ...asked,
    steel,
    treatment,
    use: use === undefined ? undefined : bandFor(wordAsked(use, findUse), steel),
    quench: quench === undefined ? undefined : wordAsked(quench, findQuench),
  };
  const facts = bladeFacts(question);
  const story = told(question, facts);
  const cautions = cautionsOf(question, facts, story);
  return { ...story, cautions, next: nextStep(question, story, cautions) };
}
