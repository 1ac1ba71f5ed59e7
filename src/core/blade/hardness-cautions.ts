import type { Hardening } from "../hardening/hardens";
import { asSentence, betweenText, numberText, quantityText, temperatureText } from "../quantity-text";
import { attemptOr } from "../refusal";
import { asFahrenheit, fahrenheitQuestion } from "../tempering/fahrenheit";
import { temperedRange } from "../tempering/tempered-range";
import { type Caution, caution } from "./caution";
import type { HardnessEstimate } from "./chance";
import type { BladeQuestion, BladeStory } from "./question";
import { TESTER_HRC } from "./status";

/** Narrower than this no tester and furnace hold together, HRC. */
const NARROWEST_HRC = 2;

type Judged = Pick<BladeStory, "status" | "reach" | "missing" | "estimate">;

/** A blade that hardens in part, or that may. */
function partlyHard({ word, sentence, fullyHardMm }: Hardening): Caution {
  const depth = fullyHardMm === undefined ? "" : `: about ${fullyHardMm.toFixed(1)} mm`;
  if (word !== "marginal") {
    return caution("spoils the blade", `does not harden through${depth}`, asSentence(sentence));
  }
  const instead = "Quench a trial piece of the thickest place and read its middle.";
  return caution("spoils the blade", `marginal in this quench${depth}`, asSentence(sentence), instead);
}

/** How deep a blade hardens of which no more than the edge has to. */
function edgeText({ fullyHardMm }: Hardening): string {
  return fullyHardMm === undefined
    ? "hard at the edge only"
    : `hard where it is under about ${fullyHardMm.toFixed(1)} mm thick`;
}

/** Nobody has a figure for this steel, section and quench. */
function notJudged({ quench, thickness, steel }: BladeQuestion, { sentence }: Hardening): Caution[] {
  if (quench === undefined || thickness === undefined) return [];
  const full = `Whether ${numberText(thickness)} mm of ${steel.name} hardens through is not known here. ${asSentence(sentence)}`;
  return [caution("note", "hardening through not judged", full)];
}

/** What is known of the hardening itself. */
export function hardeningCautions(question: BladeQuestion, hardening: Hardening): Caution[] {
  switch (hardening.word) {
    case "does not harden":
      return [caution("danger", "does not harden", asSentence(hardening.sentence))];
    case "does not harden through":
    case "marginal":
      return [partlyHard(hardening)];
    case "edge only":
      return [caution("note", edgeText(hardening), asSentence(hardening.sentence))];
    case "not judged":
      return notJudged(question, hardening);
    default:
      return [];
  }
}

function ceilingCaution({ use }: BladeQuestion, estimate: HardnessEstimate | undefined): Caution[] {
  const ceiling = use?.ceiling ?? null;
  if (ceiling === null || estimate === undefined || estimate.likely <= ceiling) return [];
  const most = quantityText(ceiling, "HRC");
  return [
    caution(
      "danger",
      `hard targets: ${most} at most`,
      `Hard targets: ${most} at most (common practice, no source); better rolled than chipped.`,
    ),
  ];
}

/** A range wider than a tester's own doubt is an estimate; a narrow one claims too much. */
function narrowCaution({ reading }: BladeQuestion): Caution[] {
  if (reading === undefined || reading.high === reading.low || reading.high - reading.low >= NARROWEST_HRC)
    return [];
  const full = `A range narrower than ${NARROWEST_HRC} HRC is tighter than a tester and a furnace can hold together.`;
  return [caution("note", `a tester alone may be ±${TESTER_HRC} HRC out`, full)];
}

function disagreement(
  { temperC }: BladeQuestion,
  status: BladeStory["status"],
  expected: HardnessEstimate | undefined,
): Caution[] {
  if (expected === undefined || temperC === undefined || status !== "uncertain") return [];
  const span = `${Math.round(expected.low)} to ${quantityText(Math.round(expected.high), "HRC")}`;
  return [
    caution(
      "spoils the blade",
      "hardness and temper do not go together",
      `After ${temperatureText(temperC)} ${span} is expected: check section, quench and decarburised skin, and read again on a ground spot.`,
    ),
  ];
}

/** Whether a temper leads nearer to the band of the use than another; true without a use. */
function suitsBetter({ use, steel, treatment }: BladeQuestion, celsius: number, other: number): boolean {
  if (use === undefined) return true;
  const off = (temperC: number) => {
    const { likely } = temperedRange(steel, temperC, treatment);
    return Math.max(use.low - likely, likely - use.high, 0);
  };
  return attemptOr(true, () => off(celsius) <= off(other));
}

const ASKED_FAHRENHEIT = "°C or °F?";

function fahrenheitCaution(question: BladeQuestion): Caution[] {
  const { steel, temperC, treatment, temperHasUnit } = question;
  if (temperC === undefined || temperHasUnit === true) return [];
  const meant = asFahrenheit(steel, temperC, treatment);
  if (meant === undefined || !suitsBetter(question, meant, temperC)) return [];
  return [caution("spoils the blade", ASKED_FAHRENHEIT, fahrenheitQuestion(temperC, meant))];
}

/** The question whether °F was meant, of the cautions on a blade; empty where it is not asked. */
export function fahrenheitAsked(cautions: readonly Caution[]): string {
  return cautions.find(({ short }) => short === ASKED_FAHRENHEIT)?.full ?? "";
}

/** A target that no temper is likely to give, though it may. */
function limitCaution(question: BladeQuestion, { status, reach }: Judged): Caution[] {
  const { steel, target, reading } = question;
  const wanted = reading === undefined ? target : (reading.low + reading.high) / 2;
  if (wanted === undefined || reach === undefined || status === "out of reach") return [];
  const most = reading === undefined ? reach.highest : reach.highestBelowUsual;
  if (wanted >= reach.lowest && wanted <= most) return [];
  const isOver = wanted > reach.highest;
  const end = isOver ? reach.highest : reach.lowest;
  const error = isOver ? reach.highestError : reach.lowestError;
  const full =
    `${quantityText(wanted, "HRC")} lies ${isOver ? "over" : "under"} the ${end.toFixed(1)} HRC that ${steel.name} is likely to give, ` +
    `within the error of ±${numberText(error)} HRC.`;
  return [caution("note", `at the limit of ${steel.name}`, full)];
}

function targetCaution({ use, target }: BladeQuestion): Caution[] {
  if (use === undefined || target === undefined || (target >= use.low && target <= use.high)) return [];
  const side = target > use.high ? "above" : "below";
  return [
    caution(
      "note",
      `target ${side} the usual band`,
      `The target ${quantityText(target, "HRC")} lies ${side} the usual ${numberText(use.low)} to ${quantityText(use.high, "HRC")} for "${use.word}".`,
    ),
  ];
}

function reachCaution({ steel }: BladeQuestion, { status, reach, missing }: Judged): Caution[] {
  if (status === "out of reach" && reach !== undefined) {
    const span = `${reach.lowest.toFixed(1)} to ${quantityText(Number(reach.highest.toFixed(1)), "HRC")}`;
    return [
      caution(
        "spoils the blade",
        `${steel.name} reaches ${Math.round(reach.lowest)} to ${Math.round(reach.highest)} HRC`,
        `Out of reach: ${steel.name} gives ${span} ${betweenText(reach.coolestC, reach.hottestC, "°C")}.`,
      ),
    ];
  }
  if (status !== "not known" || missing === undefined) return [];
  return [caution("note", `no temper of ${steel.name} is held`, asSentence(missing.message))];
}

/** What is known of the hardness of a blade against its use. */
export function hardnessCautions(
  question: BladeQuestion,
  story: Judged,
  expected: HardnessEstimate | undefined,
): Caution[] {
  return [
    ...reachCaution(question, story),
    ...ceilingCaution(question, story.status === "does not harden" ? undefined : story.estimate),
    ...disagreement(question, story.status, expected),
    ...fahrenheitCaution(question),
    ...targetCaution(question),
    ...limitCaution(question, story),
    ...narrowCaution(question),
  ];
}

/** What the band itself rests on; it stands after all that is known of the blade. */
export function bandCautions({ use }: BladeQuestion): Caution[] {
  return use?.evidence === "common practice" ? [BASIS] : [];
}

const BASIS = caution("note", "band: common practice, no source", "The band is common practice, no source.");
