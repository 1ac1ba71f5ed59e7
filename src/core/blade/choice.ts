import { type CrackRank, crackRisk } from "../hardening/crack-risk";
import { softBySteel } from "../hardening/hardens";
import { bathOf, maxSection } from "../hardening/max-section";
import { findQuench, type QuenchMedium } from "../hardening/quench-media";
import { asSentence } from "../quantity-text";
import { attemptOr } from "../refusal";
import { relation } from "../relation";
import type { Steel } from "../steel/steel";
import { SHOP_NEEDS, steelTraits, type Traits, usualQuench } from "../steel/traits";
import { allTwins, systemsCarrying, type TwinGroup, twinGroups } from "../steel/twins";
import type { Use } from "./bands";
import { CLEAR_MARGIN, givesUpText, type Told, whyText } from "./choice-words";
import { isNamedFor } from "./named-steels";
import type { BladeStory } from "./question";
import type { BladeStatus } from "./status";
import { steelKind } from "./steel-kind";
import { bladeStory } from "./story";
import { SUITABILITIES, type Suitability, saidAs, suitability, wantsSoftBody } from "./suitability";

/** The order in which steels are put forward for a use. */
export const CHOICE_ORDER = relation({
  title: "Order of steels for a use",
  source: "steel-by-use",
  locator:
    "what cannot be stands last; the others by suitability, chance within 0.35 of the best of the list (once a coupon is read) and no marginal quench, named by the trade for the use, chance within 0.15, margin in the quench, what the shop needs (first of all where it has no kiln), price, how many systems carry it, chance",
  evidence: "common practice",
  inputs: {},
  output: { label: "order", unit: "" },
  error: {
    size: null,
    unit: "",
    kind: "an order of these words one after another, no score: neighbours may change places",
  },
});

/** A steel that may be chosen, with what it costs. */
export interface OfferedSteel {
  readonly steel: Steel;
  /** Price a kg in the sheet's own currency. */
  readonly price?: number | undefined;
}

/** What a steel is wanted for and what the shop can do. What is left out is not judged. */
export interface ChoiceQuestion {
  readonly use: Use;
  /** mm */
  readonly thickness?: number | undefined;
  readonly quench?: QuenchMedium | undefined;
  /** mm */
  readonly length?: number | undefined;
  /** True: it must be stainless; false: it must not. */
  readonly stainless?: boolean | undefined;
  /** False: the shop has no kiln. */
  readonly kiln?: boolean | undefined;
}

/** A steel as it stands in the list. */
export interface Choice {
  readonly steel: Steel;
  /** Its own name first, then those of its twins. */
  readonly names: readonly string[];
  readonly status: BladeStatus | "ruled out";
  readonly temperC: number | undefined;
  /** HRC */
  readonly likely: number | undefined;
  readonly chance: number | undefined;
  /** The same once a coupon of the heat has been read, as every heat should be. */
  readonly afterCoupon: number | undefined;
  readonly hardensMm: number | undefined;
  readonly traits: Traits;
  readonly price: number | undefined;
  readonly suits: Suitability;
  readonly isNamed: boolean;
  readonly why: string;
  readonly givesUp: string;
}

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

const TREATMENT = { hours: 2, cycles: 1 };

/** How much the quench of the question is to be feared for the steel itself; low where none is given. */
function crackRankIn({ quench }: ChoiceQuestion, steel: Steel): CrackRank {
  return quench === undefined ? "low" : crackRisk(steel, quench).rank;
}

/** Why a steel cannot be, from the steel and the shop alone; empty where nothing bars it. */
function barredBy(question: ChoiceQuestion, steel: Steel, traits: Traits): string {
  const { use, length, stainless, kiln, quench } = question;
  const soft = softBySteel(steel);
  if (soft !== "") return soft;
  if (crackRankIn(question, steel) === "high") return `likely to crack in ${quench?.word}: quench it in oil`;
  const isBright = traits.rust === "stainless";
  if (stainless === true && !isBright) return notBright(use, traits);
  if (stainless === false && isBright) return "stainless, and none is wanted";
  if (kiln === false && SHOP_NEEDS.indexOf(traits.need) > SHOP_NEEDS.indexOf("steady kiln")) {
    return `hardening wants more than a forge: ${traits.needs}`;
  }
  const kind = attemptOr(undefined, () => steelKind(steel));
  if (kind === undefined)
    return "the grade does not fix its carbon: give the grade with its class, or an analysis";
  return suitability({ use, steel, length }, kind) === "no"
    ? `${saidAs(kind)} is not the trade's choice for this use`
    : "";
}

/** Cladding is the honest way to rust-free sides where only the edge cuts. */
function notBright({ service }: Use, { rust, kind }: Traits): string {
  const clad = service === "light" && (kind === "plain high carbon" || kind === "low-alloy high carbon");
  return clad
    ? "not stainless; clad with soft stainless its sides do not rust, its edge still does (CLADDING)"
    : `not stainless: ${rust}`;
}

/** A bath without a figure of its own is no slower than this one, where it is an oil. */
const SLOWEST_OIL = findQuench("slow oil");

/** The thickest section [mm] that hardens through in a bath, and the bath that the figure is held for. */
function depthIn(steel: Steel, quench: QuenchMedium): { mm: number | undefined; bath: string } {
  const own = attemptOr(undefined, () => maxSection(steel, bathOf(quench)).fullyHardMm);
  const bath = own === undefined && quench.kind === "oil" ? SLOWEST_OIL : quench;
  const mm = own ?? attemptOr(undefined, () => maxSection(steel, bathOf(bath)).fullyHardMm);
  return { mm, bath: bath.word };
}

function ruledOut({ group: { first, all }, price }: Candidate, traits: Traits, why: string): Choice {
  return {
    steel: first,
    names: all.map(({ name }) => name),
    status: softBySteel(first) === "" ? "ruled out" : "does not harden",
    temperC: undefined,
    likely: undefined,
    chance: undefined,
    afterCoupon: undefined,
    hardensMm: undefined,
    traits,
    price,
    suits: "no",
    isNamed: false,
    why: asSentence(why),
    givesUp: "",
  };
}

const CANNOT: readonly (BladeStatus | "")[] = ["does not harden", "out of reach"];

/** Why a steel that suits cannot be after all: it does not harden in that quench, or reaches no part of the band. */
function failure(story: BladeStory, { low, high }: Use): string {
  if (story.status === "does not harden") return story.hardening.sentence;
  const { lowest = 0, highest = 0 } = story.reach ?? {};
  return `its tempers give ${Math.round(lowest)} to ${Math.round(highest)} HRC, the use asks for ${low} to ${high}`;
}

function judgedChoice(question: ChoiceQuestion, candidate: Candidate, traits: Traits): Choice {
  const { use, thickness, length, quench } = question;
  const { first, all } = candidate.group;
  const story = bladeStory({ use, steel: first, thickness, length, quench, treatment: TREATMENT });
  const depth = depthIn(first, quench ?? usualQuench(first));
  const suits = suitability({ use, steel: first, length }, steelKind(first));
  const told: Told = {
    use,
    suits,
    isNamed: all.some((steel) => isNamedFor(use, steel)),
    traits,
    chance: story.chance,
    hardensMm: depth.mm,
    thickness,
    bath: depth.bath,
    avoidsBrittle: story.best?.avoided !== undefined,
    mayCrackIn: crackRankIn(question, first) === "low" ? undefined : quench?.word,
  };
  const cannot = CANNOT.includes(story.status);
  return {
    steel: first,
    names: all.map(({ name }) => name),
    status: story.status === "" ? "not known" : story.status,
    temperC: cannot ? undefined : story.temperC,
    likely: cannot ? undefined : story.estimate?.likely,
    chance: story.chance,
    afterCoupon: story.best?.withCoupon ?? story.chance,
    hardensMm: told.hardensMm,
    traits,
    price: candidate.price,
    suits,
    isNamed: told.isNamed,
    why: cannot ? asSentence(failure(story, use)) : whyText(told),
    givesUp: cannot ? "" : givesUpText(told),
  };
}

function choiceOf(question: ChoiceQuestion, candidate: Candidate): Choice {
  const { first } = candidate.group;
  const traits = steelTraits(first);
  const barred = barredBy(question, first, traits);
  return barred === "" ? judgedChoice(question, candidate, traits) : ruledOut(candidate, traits, barred);
}

const isOut = ({ status }: Choice) => status === "ruled out" || CANNOT.includes(status);

/** How far below the best chance of the list a chance may lie and still count as near to it, and as not far off. */
const BELOW_BEST = { near: 0.15, far: 0.35 };

/** The step of a chance far below the best of the list, and of a section that does not harden through. */
const FAR = 2;

/** 0 near the best chance that any steel of the list has, 1 some way off, 2 far off or not known. */
function chanceStep({ afterCoupon }: Choice, best: number): number {
  if (afterCoupon === undefined || afterCoupon < best - BELOW_BEST.far) return FAR;
  return afterCoupon >= best - BELOW_BEST.near ? 0 : 1;
}

/** 0 with room in the quench, 1 within the error of the figure or not judged, 2 below it. */
function marginStep({ hardensMm: mm }: Choice, { use, thickness }: ChoiceQuestion): number {
  if (thickness === undefined) return 0;
  if (wantsSoftBody(use)) return mm !== undefined && mm < thickness ? 0 : 1;
  if (use.part !== "whole") return 0;
  if (mm === undefined) return 1;
  return mm >= CLEAR_MARGIN * thickness ? 0 : mm >= thickness ? 1 : FAR;
}

/** What is compared, one after another; the first difference decides. */
function keysOf(choice: Choice, question: ChoiceQuestion, best: number): readonly number[] {
  const need = SHOP_NEEDS.indexOf(choice.traits.need);
  const chance = chanceStep(choice, best);
  const margin = marginStep(choice, question);
  return [
    isOut(choice) ? 1 : 0,
    question.kiln === false ? need : 0,
    SUITABILITIES.indexOf(choice.suits),
    chance === FAR || margin === FAR ? 1 : 0,
    choice.isNamed ? 0 : 1,
    chance,
    margin,
    need,
    choice.price ?? Number.MAX_VALUE,
    -systemsCarrying(choice.steel),
    -(choice.chance ?? 0),
  ];
}

function inOrder(choices: readonly Choice[], question: ChoiceQuestion): Choice[] {
  const best = Math.max(0, ...choices.map(({ afterCoupon }) => afterCoupon ?? 0));
  return choices
    .map((choice) => ({ choice, keys: keysOf(choice, question, best) }))
    .sort((a, b) => {
      const at = a.keys.findIndex((key, i) => key !== b.keys[i]);
      return at < 0 ? 0 : (a.keys[at] as number) - (b.keys[at] as number);
    })
    .map(({ choice }) => choice);
}

/**
 * Steels for a use, the most fitting first, each with the reason for it and what is given up with it.
 * The order is that of `CHOICE_ORDER`: words compared one after another, no score.
 *
 * @param question - Use, thickness and length [mm], quench, whether stainless, whether a kiln is there.
 * @param offered - Steels to choose from with their prices; every grade of the table where left out.
 * @returns Every steel, twins as one; what cannot be stands last with its reason.
 */
export function steelsFor(question: ChoiceQuestion, offered?: readonly OfferedSteel[]): readonly Choice[] {
  const candidates =
    offered === undefined ? allTwins().map((group) => ({ group, price: undefined })) : fromList(offered);
  return inOrder(
    candidates.map((candidate) => choiceOf(question, candidate)),
    question,
  );
}
