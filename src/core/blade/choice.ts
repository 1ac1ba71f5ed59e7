import { airHardeningMm } from "../hardening/air-hardening";
import { type CrackRank, crackRisk } from "../hardening/crack-risk";
import { softBySteel } from "../hardening/hardens";
import { bathOf, maxSection, noseOf } from "../hardening/max-section";
import { findQuench, type QuenchMedium } from "../hardening/quench-media";
import { type InParts, toTheEnd } from "../parts";
import { asSentence } from "../quantity-text";
import { attemptOr } from "../refusal";
import type { Steel } from "../steel/steel";
import { type ShopNeed, steelTraits, type Traits, usualQuench } from "../steel/traits";
import { allTwins, type TwinGroup, twinGroups } from "../steel/twins";
import { nearBrittleText } from "../tempering/embrittlement";
import { wordAsked } from "../word-list";
import { bandFor } from "./band-by-steel";
import { findUse, type Use } from "./bands";
import { CANNOT, inOrder } from "./choice-order";
import type { Choice, ChoiceAsked, ChoiceQuestion, OfferedSteel } from "./choice-row";
import { givesUpText, type Told, whyText } from "./choice-words";
import { isNamedFor, namedByDesignation } from "./named-steels";
import type { BladeStory } from "./question";
import { isSoldWidely } from "./sold-widely";
import { missOf } from "./status";
import { steelKind } from "./steel-kind";
import { bladeStory } from "./story";
import { saidAs, suitability } from "./suitability";

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

/** How much the quench of the question is to be feared for the steel itself; low where none is given. */
function crackRankIn({ quench }: ChoiceQuestion, steel: Steel): CrackRank {
  return quench === undefined ? "low" : crackRisk(steel, quench).rank;
}

/** The quench that a steel is judged in: that of the question, or air, which every shop has, where that is too harsh for it. */
function quenchFor(question: ChoiceQuestion, steel: Steel): QuenchMedium | undefined {
  const isAir = airHardeningMm(steel) !== undefined && crackRankIn(question, steel) !== "low";
  return isAir ? usualQuench(steel) : question.quench;
}

/** What the bath of the question does to a steel that is less harshly quenched; empty where nothing. */
function harshText(question: ChoiceQuestion, steel: Steel): string {
  const { quench } = question;
  if (quench === undefined || crackRankIn(question, steel) === "low") return "";
  const own = quenchFor(question, steel);
  return own === quench
    ? `${quench.word} cracks some blades: start more`
    : `not in ${quench.word}, which may crack it: cool it in ${own?.word}`;
}

/** What bars a steel, the most easily mended first: another shop, another bath, nothing but another steel. */
const BARS = { none: 0, kiln: 1, bath: 2, band: 3, rust: 4, use: 5, soft: 6 } as const;

interface Bar {
  readonly why: string;
  readonly step: number;
}

/** Why a steel cannot be whatever the shop has; nothing where it may. */
function barredBySteel(
  { use, length, stainless }: ChoiceQuestion,
  steel: Steel,
  traits: Traits,
): Bar | undefined {
  const soft = softBySteel(steel);
  if (soft !== "") return { why: soft, step: BARS.soft };
  const isBright = traits.rust === "stainless";
  if (stainless === true && !isBright) return { why: notBright(use, traits), step: BARS.rust };
  if (stainless === false && isBright) return { why: "stainless, and none is wanted", step: BARS.rust };
  const kind = attemptOr(undefined, () => steelKind(steel));
  if (kind === undefined) {
    const why = "the grade does not fix its carbon: give the grade with its class, or an analysis";
    return { why, step: BARS.use };
  }
  if (suitability({ use, steel, length }, kind) !== "no") return undefined;
  return { why: `${saidAs(kind)} is not the trade's choice for this use`, step: BARS.use };
}

/** Why the shop cannot harden a steel that would do. */
function barredByShop(question: ChoiceQuestion, steel: Steel, traits: Traits): Bar | undefined {
  if (quenchFor(question, steel) === question.quench && crackRankIn(question, steel) === "high") {
    return { why: `likely to crack in ${question.quench?.word}: quench it in oil`, step: BARS.bath };
  }
  if (question.kiln !== false || !NEEDS_KILN.includes(traits.need)) return undefined;
  return { why: `hardening wants more than a forge: ${traits.needs}`, step: BARS.kiln };
}

const NEEDS_KILN: readonly ShopNeed[] = ["kiln above 900 °C (1652 °F)", "outside heat treater"];

/** Cladding is the honest way to rust-free sides where only the edge cuts. */
function notBright({ service }: Use, { rust, kind }: Traits): string {
  const clad = service === "light" && (kind === "plain high carbon" || kind === "low-alloy high carbon");
  return clad
    ? "not stainless; clad with soft stainless its sides do not rust, its edge still does (CLADDING)"
    : `not stainless: ${rust}`;
}

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
  const bar = barredBySteel(question, first, traits) ?? barredByShop(question, first, traits);
  return bar === undefined
    ? judgedChoice(question, candidate, traits)
    : ruledOut(question, candidate, traits, bar);
}

/**
 * What to do where nothing that was asked can be, in a sentence; empty where something can.
 *
 * @param choices - As `steelsFor` gives them.
 * @returns A sentence; temperatures in it [°C]
 * Limits: nothing is refused. Error and source: those of `steelsFor`.
 */
export function nothingFits(choices: readonly Choice[]): string {
  const [first] = choices;
  if (first === undefined || first.barred === BARS.none) return "";
  const clad = "or clad a plain edge with stainless, which keeps its sides bright (CLADDING)";
  switch (first.barred) {
    case BARS.kiln: {
      const other = first.traits.rust === "stainless" ? clad : "or take another steel";
      return `Without a kiln above 900 °C (1652 °F) none of these can be hardened: send the blades out, ${other}.`;
    }
    case BARS.bath:
      return "None of these can be hardened in this bath without cracks to be feared: quench in oil.";
    default:
      // Of one steel its own row says it all.
      return choices.length === 1 ? "" : "None of these fits what was asked: each row says why.";
  }
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
