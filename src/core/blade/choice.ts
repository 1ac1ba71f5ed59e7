import { airHardeningMm } from "../hardening/air-hardening";
import { bathOf, maxSection, noseOf } from "../hardening/max-section";
import { findQuench, type QuenchMedium } from "../hardening/quench-media";
import { type InParts, toTheEnd } from "../parts";
import { asSentence } from "../quantity-text";
import { attemptOr } from "../refusal";
import type { Steel } from "../steel/steel";
import { steelTraits, type Traits, usualQuench } from "../steel/traits";
import { allTwins, type TwinGroup, twinGroups } from "../steel/twins";
import { nearBrittleText } from "../tempering/embrittlement";
import { wordAsked } from "../word-list";
import { bandFor } from "./band-by-steel";
import { findUse, type Use } from "./bands";
import { BARS, type Bar, barOf, harshText, quenchFor } from "./choice-bars";
import { CANNOT, inOrder } from "./choice-order";
import type { Choice, ChoiceAsked, ChoiceQuestion, OfferedSteel } from "./choice-row";
import { givesUpText, type Told, whyText } from "./choice-words";
import { isNamedFor, namedByDesignation } from "./named-steels";
import type { BladeStory } from "./question";
import { isSoldWidely } from "./sold-widely";
import { missOf } from "./status";
import { steelKind } from "./steel-kind";
import { bladeStory } from "./story";
import { suitability } from "./suitability";

export type { Choice, ChoiceAsked, ChoiceQuestion, OfferedSteel } from "./choice-row";

interface Candidate {
  readonly group: TwinGroup;
  readonly price: number | undefined;
}

/** Steels of a list, twins together, the cheapest of them first. */
function fromList(offered: readonly OfferedSteel[]): readonly Candidate[] {
  const dear = (price: number | undefined) => price ?? Number.POSITIVE_INFINITY;
  const byPrice = [...offered].sort((a, b) =>
    dear(a.price) < dear(b.price) ? -1 : dear(a.price) > dear(b.price) ? 1 : 0,
  );
  return twinGroups(byPrice.map(({ steel }) => steel)).map((group) => ({
    group,
    price: byPrice.find(({ steel }) => steel === group.first)?.price,
  }));
}

const TREATMENT = {};

/** A bath without a figure of its own is no slower than this one, where it is an oil. */
const SLOWEST_OIL = findQuench("slow oil");

interface Depth {
  readonly mm: number | undefined;
  /** The bath that the figure is held for, and how it bears on the one asked about. */
  readonly bath: string;
}

/** The thickest section [mm] that hardens through in a bath. */
function depthIn(steel: Steel, quench: QuenchMedium): Depth {
  const own = attemptOr(undefined, () => maxSection(steel, bathOf(quench)).fullyHardMm);
  if (own !== undefined || quench.kind !== "oil") return { mm: own, bath: quench.word };
  const mm = attemptOr(undefined, () => maxSection(steel, bathOf(SLOWEST_OIL)).fullyHardMm);
  return { mm, bath: `${quench.word} (figure of ${SLOWEST_OIL.word})` };
}

function ruledOut(question: ChoiceQuestion, { group, price }: Candidate, traits: Traits, bar: Bar): Choice {
  const { use, length } = question;
  const { first, all } = group;
  return {
    steel: first,
    names: all.map(({ name }) => name),
    status: bar.step === BARS.soft ? "does not harden" : "ruled out",
    barred: bar.step,
    temperC: undefined,
    likely: undefined,
    chance: undefined,
    hardensMm: undefined,
    traits,
    price,
    suits: attemptOr("no", () => suitability({ use, steel: first, length }, steelKind(first))),
    isNamed: all.some((steel) => isNamedFor(use, steel)),
    isSold: all.some(isSoldWidely),
    why: asSentence(bar.why),
    givesUp: "",
  };
}

/** Why a steel that suits cannot be after all: it does not harden in that quench, or reaches no part of the band. */
function failure(story: BladeStory, { low, high }: Use): string {
  if (story.status === "does not harden") return story.hardening.sentence;
  const { lowest = 0, highest = 0 } = story.reach ?? {};
  return `its tempers give ${Math.round(lowest)} to ${Math.round(highest)} HRC, the use asks for ${low} to ${high}`;
}

/** Time [s] within which a steel must be cooled past the nose of its diagram; undefined where it is not known. */
function noseSeconds(steel: Steel): number | undefined {
  return airHardeningMm(steel) === undefined ? attemptOr(undefined, () => noseOf(steel).seconds) : undefined;
}

/** A use whose list names a class of steels names none of them that comes out outside its band. */
function namedUse(use: Use, { status }: BladeStory): Use {
  return status === "too hard" || status === "too soft" ? namedByDesignation(use) : use;
}

/** What a brittle range has to do with the temper of a story. */
function brittleText(steel: Steel, { best, temperC }: BladeStory): string {
  if (best?.avoided !== undefined) {
    return `${nearBrittleText(steel, best.avoided.celsius)} is avoided as brittle, hence this temper`;
  }
  const own = temperC === undefined ? "" : nearBrittleText(steel, temperC);
  return own === "" ? "" : `tempered within its brittle range, ${own}`;
}

function toldOf(
  question: ChoiceQuestion,
  { group: { first, all } }: Candidate,
  traits: Traits,
  story: BladeStory,
): Told {
  const { use, thickness, length } = question;
  const quench = quenchFor(question, first);
  const depth = depthIn(first, quench ?? usualQuench(first));
  const named = namedUse(use, story);
  const band = bandFor(use, first);
  return {
    use: band,
    suits: suitability({ use: named, steel: first, length }, steelKind(first)),
    isNamed: all.some((steel) => isNamedFor(named, steel)),
    traits,
    chance: story.chance,
    hardensMm: depth.mm,
    thickness,
    bath: quench === undefined ? `${depth.bath}, its usual quench` : depth.bath,
    noseS: noseSeconds(first),
    miss: story.estimate === undefined ? 0 : missOf(band, story.estimate.likely),
    brittle: brittleText(first, story),
    harsh: harshText(question, first),
  };
}

function judgedChoice(question: ChoiceQuestion, candidate: Candidate, traits: Traits): Choice {
  const { use, thickness, length } = question;
  const { first, all } = candidate.group;
  const quench = quenchFor(question, first);
  const story = bladeStory({ use, steel: first, thickness, length, quench, treatment: TREATMENT });
  const told = toldOf(question, candidate, traits, story);
  const cannot = CANNOT.includes(story.status);
  return {
    steel: first,
    names: all.map(({ name }) => name),
    status: story.status === "" ? "not known" : story.status,
    barred: cannot ? BARS.band : BARS.none,
    temperC: cannot ? undefined : story.temperC,
    likely: cannot ? undefined : story.estimate?.likely,
    chance: story.chance,
    hardensMm: told.hardensMm,
    traits,
    price: candidate.price,
    suits: told.suits,
    isNamed: told.isNamed,
    isSold: all.some(isSoldWidely),
    why: cannot ? asSentence(failure(story, told.use)) : whyText(told),
    givesUp: cannot ? "" : givesUpText(told),
  };
}

function choiceOf(question: ChoiceQuestion, candidate: Candidate): Choice {
  const { first } = candidate.group;
  const traits = steelTraits(first);
  const bar = barOf(question, first, traits);
  return bar === undefined
    ? judgedChoice(question, candidate, traits)
    : ruledOut(question, candidate, traits, bar);
}

/**
 * Steels for a use, the most fitting first, each with the reason for it and what is given up with it.
 * The order is that of `CRITERIA`: words compared one after another, no score.
 *
 * @param question - Use, thickness and length [mm], quench, whether stainless, whether a kiln is there.
 * @param offered - Steels to choose from with their prices; every grade of the table where left out.
 * @returns Every steel, twins as one: temper [°C], hardness [HRC], chance 0 to 1; what cannot be stands last with its
 *   reason.
 * @throws NotAvailable for a use or a quench that is not known.
 * Error and source: {@link CHOICE_ORDER}, {@link STEEL_BY_USE}; figures as `bladeStory` gives them.
 */
export function steelsFor(question: ChoiceAsked, offered?: readonly OfferedSteel[]): readonly Choice[] {
  const { quench } = question;
  const asked = {
    ...question,
    use: wordAsked(question.use, findUse),
    quench: quench === undefined ? undefined : wordAsked(quench, findQuench),
  };
  return toTheEnd(steelsForInParts(asked, offered));
}

/** The same steels in parts: it may pause after each. */
export function* steelsForInParts(
  question: ChoiceQuestion,
  offered?: readonly OfferedSteel[],
): InParts<readonly Choice[]> {
  const candidates =
    offered === undefined ? allTwins().map((group) => ({ group, price: undefined })) : fromList(offered);
  const choices: Choice[] = [];
  for (const candidate of candidates) {
    choices.push(choiceOf(question, candidate));
    yield;
  }
  return inOrder(choices, { ...question, isOffered: offered !== undefined });
}
