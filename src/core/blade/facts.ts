import type { Hardening } from "../hardening/hardens";
import { quenchedHardness } from "../hardening/quenched";
import { attempt, attemptOr, NotAvailable } from "../refusal";
import type { TemperReach } from "../tempering/reach";
import { slackOf, softText } from "../tempering/section-effect";
import { type TemperPlan, temperPlan } from "../tempering/temper-plan";
import { temperedRange } from "../tempering/tempered-range";
import { nearestTemper, usualReach } from "./band-candidates";
import { type BandTemper, bandTemper } from "./band-temper";
import type { HardnessEstimate } from "./chance";
import { hardPartMm, partHardens } from "./hard-part";
import type { BladeQuestion } from "./question";

/** What a temper is expected to give. */
interface Expected {
  /** °C */
  readonly temperC: number;
  readonly estimate: HardnessEstimate;
  readonly basis: string;
  /** What the estimate takes for granted, in words. */
  readonly taken: string;
}

/** What is known of a blade before it is held against a band. */
export interface BladeFacts {
  readonly hardening: Hardening;
  /** No quench, or not this one, makes the blade hard where it has to be. */
  readonly staysSoft: boolean;
  readonly asQuenched: number | undefined;
  readonly reach: TemperReach | undefined;
  readonly best: BandTemper | undefined;
  /** How the target is come by; undefined without one. */
  readonly plan: TemperPlan | undefined;
  readonly expected: Expected | undefined;
  readonly reading: HardnessEstimate | undefined;
  /** What the nearest temper gives, for a reading that the curve misses by less than its error. */
  readonly nearest: HardnessEstimate | undefined;
  /** Why there is no temper or no hardness. */
  readonly missing: NotAvailable | undefined;
}

/** The blade at the quench, as its use asks for it to be hard. */
function partOf({ use, quench, thickness }: BladeQuestion) {
  return { use, quench, thicknessMm: thickness };
}

function staysSoft({ word }: Hardening): boolean {
  return word === "does not harden" || word === "does not harden through";
}

function bestOf({ use, steel, treatment }: BladeQuestion, { word }: Hardening): BandTemper | undefined {
  if (use === undefined) return undefined;
  return attemptOr(undefined, () => bandTemper({ use, steel, treatment, lower: slackOf(word) }));
}

/** The temper for a target as its plan has it, whole °C; of two the cooler. */
function plannedFor({ likelyC, caution }: TemperPlan): number {
  if (likelyC === null) throw new NotAvailable(caution);
  return Math.round(likelyC);
}

/** The temper of the question, and what it is expected to give; nothing where only a reading is given. */
function expectedOf(question: BladeQuestion, plan: TemperPlan | undefined, best: BandTemper | undefined) {
  const { steel, treatment, temperC, quench, reading, asIs } = question;
  if ((reading !== undefined || asIs === true) && temperC === undefined) return undefined;
  const chosen = temperC ?? (plan === undefined ? best?.celsius : plannedFor(plan));
  if (chosen === undefined) return undefined;
  const section = { quench, thicknessMm: hardPartMm(partOf(question)) };
  const { low, likely, high, basis, caution } = temperedRange(steel, chosen, treatment, section);
  return { temperC: chosen, estimate: { low, likely, high }, basis, taken: caution } satisfies Expected;
}

function readingOf({ reading }: BladeQuestion): HardnessEstimate | undefined {
  if (reading === undefined) return undefined;
  const { low, high } = reading;
  return { low, likely: (low + high) / 2, high };
}

/** No temper is likely to give such a reading: it counts no more than what the nearest temper gives. */
function nearestTo(reading: HardnessEstimate | undefined, reach: TemperReach, question: BladeQuestion) {
  if (reading === undefined) return undefined;
  if (reading.likely >= reach.lowest && reading.likely <= reach.highestBelowUsual) return undefined;
  const { steel, treatment } = question;
  const { low, likely, high } = temperedRange(
    steel,
    nearestTemper(steel, treatment, reading.likely),
    treatment,
  );
  return { low, likely, high };
}

function softFacts(question: BladeQuestion, hardening: Hardening): BladeFacts {
  const reading = readingOf(question);
  return {
    hardening,
    staysSoft: true,
    asQuenched: undefined,
    reach: undefined,
    best: undefined,
    plan: undefined,
    expected: undefined,
    reading,
    nearest: undefined,
    missing: reading === undefined ? new NotAvailable(softText(hardening)) : undefined,
  };
}

/** Without a published temper the refusal of the reach says why, unless only a reading is judged. */
function temperedFacts(question: BladeQuestion, best: BandTemper | undefined) {
  const reach = attempt(() => usualReach(question.steel, question.treatment), NotAvailable);
  const isJudgedByReading = question.reading !== undefined && question.temperC === undefined;
  if (reach instanceof NotAvailable) {
    const missing = isJudgedByReading ? undefined : reach;
    return { reach: undefined, plan: undefined, expected: undefined, nearest: undefined, missing };
  }
  const { steel, target, treatment } = question;
  const plan = target === undefined ? undefined : temperPlan(steel, target, treatment);
  const nearest = nearestTo(readingOf(question), reach, question);
  const expected = attempt(() => expectedOf(question, plan, best), NotAvailable);
  if (expected instanceof NotAvailable)
    return { reach, plan, expected: undefined, nearest, missing: expected };
  return { reach, plan, expected, nearest, missing: undefined };
}

/**
 * Gathers what is known of a blade: whether it hardens, how hard it gets, which tempers it has and what the
 * temper in question gives.
 *
 * @throws InvalidValue for a malformed target or known reading.
 */
export function bladeFacts(question: BladeQuestion): BladeFacts {
  const { steel, treatment } = question;
  const hardening = partHardens(steel, partOf(question));
  if (staysSoft(hardening)) return softFacts(question, hardening);
  const best = bestOf(question, hardening);
  const { hardenC, quenchToC } = treatment;
  return {
    hardening,
    staysSoft: false,
    asQuenched: attemptOr(undefined, () => quenchedHardness(steel, hardenC, quenchToC).hrc),
    best,
    reading: readingOf(question),
    ...temperedFacts(question, best),
  };
}
