import type { Hardening } from "../hardening/hardens";
import { asSentence, numberText, quantityText, temperatureText } from "../quantity-text";
import { fahrenheitMeant } from "../tempering/fahrenheit";
import { type Caution, caution } from "./caution";
import type { HardnessEstimate } from "./chance";
import type { BladeQuestion, BladeStory } from "./question";
import { TESTER_HRC } from "./status";

/** Narrower than this no tester and furnace hold together, HRC. */
const NARROWEST_HRC = 2;

/** What is known of the hardening itself. */
export function hardeningCautions({ use, thickness, steel }: BladeQuestion, hardening: Hardening): Caution[] {
  const { word, sentence, fullyHardMm } = hardening;
  if (word === "does not harden") return [caution("danger", "does not harden", asSentence(sentence))];
  if (word === "does not harden through" || word === "marginal") {
    const depth = fullyHardMm === undefined ? "" : `: about ${fullyHardMm.toFixed(1)} mm`;
    const short = word === "marginal" ? `marginal in this quench${depth}` : `does not harden through${depth}`;
    return [caution("spoils the blade", short, asSentence(sentence))];
  }
  if (word !== "not judged" || use?.part !== "whole" || thickness === undefined || fullyHardMm !== undefined)
    return [];
  const full = `Whether ${numberText(thickness)} mm of ${steel.name} hardens through is not known here: ${sentence}.`;
  return [caution("note", "hardening through not judged", full)];
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

function fahrenheitCaution({ steel, temperC, treatment }: BladeQuestion): Caution[] {
  const asked = temperC === undefined ? "" : fahrenheitMeant(steel, temperC, treatment);
  return asked === "" ? [] : [caution("spoils the blade", "°C or °F?", asked)];
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

function reachCaution(
  { steel }: BladeQuestion,
  { status, reach, missing }: Pick<BladeStory, "status" | "reach" | "missing">,
): Caution[] {
  if (status === "out of reach" && reach !== undefined) {
    const span = `${reach.lowest.toFixed(1)} to ${quantityText(Number(reach.highest.toFixed(1)), "HRC")}`;
    return [
      caution(
        "spoils the blade",
        `${steel.name} reaches ${Math.round(reach.lowest)} to ${Math.round(reach.highest)} HRC`,
        `Out of reach: ${steel.name} gives ${span} between ${temperatureText(reach.coolestC)} and ${temperatureText(reach.hottestC)}.`,
      ),
    ];
  }
  if (status !== "not known" || missing === undefined) return [];
  return [caution("note", `no temper of ${steel.name} is held`, asSentence(missing.message))];
}

/** What is known of the hardness of a blade against its use. */
export function hardnessCautions(
  question: BladeQuestion,
  story: Pick<BladeStory, "status" | "reach" | "missing" | "estimate">,
  expected: HardnessEstimate | undefined,
): Caution[] {
  return [
    ...reachCaution(question, story),
    ...ceilingCaution(question, story.status === "does not harden" ? undefined : story.estimate),
    ...disagreement(question, story.status, expected),
    ...fahrenheitCaution(question),
    ...targetCaution(question),
    ...narrowCaution(question),
    ...(question.use?.evidence === "common practice" ? [BASIS] : []),
  ];
}

const BASIS = caution("note", "band: common practice, no source", "The band is common practice, no source.");
