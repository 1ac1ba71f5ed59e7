import { withinWords } from "../cell-text";
import { publishedTreatment } from "../hardening/heat-treatment";
import { isMartensiticStainless } from "../hardening/stainless";
import { numberText, quantityText, temperatureText } from "../quantity-text";
import { RememberedAnswers } from "../remembered-answers";
import { type SteelAsked, steelAsked } from "../steel/asked";
import type { Steel } from "../steel/steel";
import { extremes } from "./curve";
import { blandTempers, brittleText, mustCoolFast } from "./embrittlement";
import { hollomonJaffe, totalHours } from "./hollomon-jaffe";
import type { TemperModel } from "./model";
import { isBeyondError, isOutOfReach, type TemperReach, temperReach } from "./reach";
import { inRange, wholeDegrees } from "./temper-limits";
import { readingShift, type Treatment } from "./tempered";
import { bandHalfWidth, generalCautions } from "./tempered-range";
import { temperModel } from "./tempering-model";
import { COOLEST_TEMPER_C, checkTarget, nearestUsual, temperSpanFor, tempersFor } from "./usual-tempers";

/** What kind of answer a target has. */
export type TemperFlag =
  | "one answer"
  | "plateau"
  | "two answers"
  | "embrittlement range"
  | "at the limit"
  | "below usual temper"
  | "out of reach";

/** The temper for a target; temperatures in °C, `null` where there is no answer. */
export interface LikelyTemper {
  /** The temper at which the curve gives the target, or comes nearest to it [°C]. */
  readonly likelyC: number | null;
  /** How far the curve at the likely temper lies from the target; 0 where it gives the target itself [HRC]. */
  readonly missesBy: number;
  /** The hottest of the tempers that give it, where there are several; else `null` [°C]. */
  readonly otherC: number | null;
}

/** A temper to begin with, and what to expect about it; temperatures in °C, `null` where there is no answer. */
export interface TemperPlan extends LikelyTemper {
  /** The coolest temper that may already give the target [°C]. */
  readonly startC: number | null;
  /** The hottest that may still give it [°C]. */
  readonly highC: number | null;
  /** What stands in the way, in a word. */
  readonly flag: TemperFlag;
  /** Hardness 10 °C below the likely temper [HRC]; `null` outside the published range. */
  readonly hrcCooler: number | null;
  /** Hardness 10 °C above the likely temper [HRC]; `null` outside the published range. */
  readonly hrcHotter: number | null;
  /** What to be wary of, in words; empty where nothing is. */
  readonly caution: string;
}

/** One HRC over this many degrees or more is a plateau: a temper cannot be read off it. */
export const PLATEAU_C = 55;
/** Where tempers this far apart all give the target within the stated error, there is no single answer, °C. */
export const BROAD_C = 200;
export const HALF_HRC = 0.5;
const STEP_C = 10;
/** Two answers nearer than this are one [°C]. */
const SAME_TEMPER_C = 0.5;

/** A target, and what is known of the blade that is to have it. */
export interface TargetQuestion {
  readonly model: TemperModel;
  readonly hours: number;
  readonly target: number;
  /** How far the blade lies above the published curve, HRC. */
  readonly shift: number;
  readonly treatment: Treatment;
}

const NO_ANSWER = {
  startC: null,
  likelyC: null,
  missesBy: 0,
  highC: null,
  otherC: null,
  hrcCooler: null,
  hrcHotter: null,
} as const;

/** HRC at a temper, `null` outside the published range. */
function hrcAt({ model, hours, shift }: TargetQuestion, celsius: number): number | null {
  const parameter = hollomonJaffe(celsius, hours);
  return inRange(model, celsius, hours, parameter) ? model.curve.hrcAt(parameter) + shift : null;
}

function extremesBetween({ model, hours, shift }: TargetQuestion, fromC: number, toC: number) {
  const { lowest, highest } = extremes(model.curve, hollomonJaffe(fromC, hours), hollomonJaffe(toC, hours));
  return { lowest: lowest + shift, highest: highest + shift };
}

/** How hard a stainless steel gets from the top of its window, where the middle was taken; "" for little gain. */
function hotterText({ model: { steel }, hours, shift, treatment }: TargetQuestion, highest: number): string {
  const top = publishedTreatment(steel)?.harden.high;
  if (treatment.hardenC !== undefined || typeof top !== "number" || !isMartensiticStainless(steel)) return "";
  const hotter = temperReach(temperModel(steel, top, treatment.quenchToC), hours, shift).highest;
  if (hotter < highest + HALF_HRC) return "";
  return ` (hardened from ${temperatureText(top)}, the top of its window, ${hotter.toFixed(1)} HRC)`;
}

/** Why no temper gives a target, with what comes nearest to it. */
function limitText(question: TargetQuestion, reach: TemperReach): string {
  const { model, target } = question;
  const name = `${quantityText(target, "HRC")} in ${model.steel.name}`;
  if (target < reach.lowest) {
    return `${name}: the lowest is ${reach.lowest.toFixed(1)} HRC, at ${temperatureText(reach.hottestC)}, the end of the published range`;
  }
  const highest =
    `the highest from ${temperatureText(reach.coolestC)} up is ${reach.highest.toFixed(1)} HRC` +
    hotterText(question, reach.highest);
  if (isOutOfReach(reach, target)) return `${name}: ${highest}`;
  const cool = `needs a temper below ${temperatureText(COOLEST_TEMPER_C)}, where quenching stress stays`;
  return `${name} ${cool}; ${highest}`;
}

function beyond(question: TargetQuestion, reach: TemperReach): TemperPlan {
  const { target } = question;
  const instead =
    target < reach.lowest
      ? "choose a harder target or another steel"
      : "choose a softer target or a steel with more carbon";
  const text = isOutOfReach(reach, target)
    ? limitText(question, reach).replace(":", " is out of reach:")
    : limitText(question, reach);
  return { ...NO_ANSWER, flag: "out of reach", caution: withinWords([text, instead]) };
}

/** A target that the curve misses by less than its error: the usual temper that comes nearest. */
function atTheLimit(question: TargetQuestion, reach: TemperReach): TemperPlan {
  const { model, target, shift, hours, treatment } = question;
  const nearest = nearestUsual(model, target - shift, hours);
  const halfWidth = bandHalfWidth(model, nearest, hours, treatment.known);
  const flag = isOutOfReach(reach, target) ? "at the limit" : "below usual temper";
  const [startC, highC] = edges(question, nearest, nearest, halfWidth);
  const within = `within the error of ±${numberText(halfWidth)} HRC: read a coupon`;
  return {
    startC,
    likelyC: nearest,
    missesBy: Math.abs((hrcAt(question, nearest) ?? target) - target),
    highC,
    otherC: null,
    flag,
    hrcCooler: hrcAt(question, nearest - STEP_C),
    hrcHotter: hrcAt(question, nearest + STEP_C),
    caution: withinWords([limitText(question, reach), within, ...generalCautions(model)]),
  };
}

/** What stands for a target that no usual temper is likely to give. */
function offTheCurve(question: TargetQuestion): TemperPlan {
  const { model, hours, target, shift, treatment } = question;
  const reach = temperReach(model, hours, shift, treatment.known);
  return isBeyondError(reach, target) ? beyond(question, reach) : atTheLimit(question, reach);
}

/** Nearest temper below `celsius` where the curve leaves a band of HRC, and whether it does at all. */
function edges(question: TargetQuestion, first: number, last: number, halfWidth: number): [number, number] {
  const { model, hours, target, shift } = question;
  const crossings = [halfWidth, -halfWidth].flatMap((off) => tempersFor(model, target + off - shift, hours));
  const [coolest, hottest] = temperSpanFor(model, hours);
  const below = crossings.filter((celsius) => celsius < first);
  const above = crossings.filter((celsius) => celsius > last);
  return [Math.max(Math.ceil(coolest), ...below), Math.min(Math.floor(hottest), ...above)];
}

function isFlat(question: TargetQuestion, first: number, last: number): boolean {
  const { lowest, highest } = extremesBetween(question, first, last);
  return highest - question.target <= HALF_HRC && question.target - lowest <= HALF_HRC;
}

interface Kind {
  readonly flag: TemperFlag;
  readonly why: string;
}

/** The tempers between which the curve is too flat for a single answer. */
function flatSpan(
  question: TargetQuestion,
  first: number,
  last: number,
  halfWidth: number,
): [number, number] | undefined {
  const flat = edges(question, first, last, HALF_HRC);
  if (flat[1] - flat[0] >= PLATEAU_C) return flat;
  const within = edges(question, first, last, halfWidth);
  return within[1] - within[0] >= BROAD_C ? within : undefined;
}

function kindOf(question: TargetQuestion, first: number, last: number, halfWidth: number): Kind {
  if (!isFlat(question, first, last)) {
    return {
      flag: "two answers",
      why: `two tempers give it, ${temperatureText(first)} and ${temperatureText(last)}: lean to the cooler, which can still be raised`,
    };
  }
  const flat = flatSpan(question, first, last, halfWidth);
  if (flat !== undefined) {
    const [from, to] = flat;
    return {
      flag: "plateau",
      why: `hardness hardly moves from ${temperatureText(from)} to ${temperatureText(to)}: lean to the cooler`,
    };
  }
  const brittle = brittleText(question.model.steel, first);
  if (brittle !== "")
    return { flag: "embrittlement range", why: `${brittle}${alternatives(question, first)}` };
  return { flag: "one answer", why: "" };
}

/** The nearest tempers outside the range, softer first, with what they give. */
function alternatives(question: TargetQuestion, celsius: number): string {
  const { model, hours } = question;
  const { cooler, hotter } = blandTempers(model.steel, celsius, temperSpanFor(model, hours));
  const gives = (at: number) => {
    const how = mustCoolFast(model.steel, at) ? ", cooled fast," : "";
    return `${temperatureText(at)}${how} about ${Math.round(hrcAt(question, at) ?? question.target)} HRC`;
  };
  return [
    hotter === null ? "" : `; softer: ${gives(hotter)}`,
    cooler === null ? "" : `; harder: ${gives(cooler)}`,
  ].join("");
}

/** A temper within the whole degrees of a span: none is advised that the published range does not name. */
function within(celsius: number, span: readonly [number, number]): number {
  const [coolest, hottest] = wholeDegrees(span);
  return Math.min(hottest, Math.max(coolest, celsius));
}

/** The coolest and the hottest of the tempers that give a target, where the two differ. */
function onTheCurve({ model, hours }: TargetQuestion, tempers: readonly number[]): LikelyTemper {
  const first = tempers[0] as number;
  const last = tempers[tempers.length - 1] as number;
  const span = temperSpanFor(model, hours);
  return {
    likelyC: within(first, span),
    missesBy: 0,
    otherC: last - first > SAME_TEMPER_C ? within(last, span) : null,
  };
}

function withAnswer(question: TargetQuestion, tempers: readonly number[]): TemperPlan {
  const { model, hours, treatment } = question;
  const first = tempers[0] as number;
  const last = tempers[tempers.length - 1] as number;
  const halfWidth = bandHalfWidth(model, first, hours, treatment.known);
  const { flag, why } = kindOf(question, first, last, halfWidth);
  const [startC, highC] = edges(question, first, first, halfWidth);
  const step = `±${numberText(halfWidth)} HRC: begin at the start, read, step up`;
  const caution = withinWords([why, step, ...generalCautions(model)]);
  return {
    ...onTheCurve(question, tempers),
    startC,
    highC,
    flag,
    hrcCooler: hrcAt(question, first - STEP_C),
    hrcHotter: hrcAt(question, first + STEP_C),
    caution,
  };
}

/**
 * The temper for a hardness with all that goes with it. Where there is no single answer the flag and the
 * caution say why, in place of an error.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param targetHrc - Wanted hardness, 20 to 68 [HRC]
 * @param treatment - Time of one cycle [h], cycles, and what is known of the blade.
 * @returns Tempers to start at, likely and at most [°C], hardness 10 °C to either side [HRC]
 * @throws NotAvailable where no published curve or formula covers the steel and the time, and as
 *   `temperedHardness` does for a known reading.
 * Error and source: {@link COMPOSITION_FORMULA} or the grade's own curve; {@link HOLLOMON_JAFFE}, {@link EMBRITTLEMENT}.
 */
export function temperPlan(steel: SteelAsked, targetHrc: number, treatment: Treatment = {}): TemperPlan {
  return planFor(targetQuestion(steelAsked(steel), targetHrc, treatment));
}

/**
 * A target, and what is known of the blade that is to have it.
 *
 * @throws as {@link temperPlan}.
 */
export function targetQuestion(steel: Steel, target: number, treatment: Treatment): TargetQuestion {
  checkTarget(target);
  const model = temperModel(steel, treatment.hardenC, treatment.quenchToC);
  const hours = totalHours(treatment.hours, treatment.cycles);
  const shift = readingShift(model, treatment.known, hours);
  return { model, hours, target, shift, treatment };
}

/** The temper of the plan for a target, without what the plan says about it, which takes far longer to work out. */
export function likelyTemper(question: TargetQuestion): LikelyTemper {
  const { model, target, shift, hours } = question;
  const tempers = tempersFor(model, target - shift, hours);
  return tempers.length === 0 ? offTheCurve(question) : onTheCurve(question, tempers);
}

/** Plans remembered for one model: the lines of a run ask for the same few hardnesses again and again. */
const remembered = new RememberedAnswers<TemperModel, TemperPlan>(200);

/** The plan for a target, where the curve has been moved to what is known already. */
export function planFor(question: TargetQuestion): TemperPlan {
  const { model, target, shift, hours, treatment } = question;
  const { known: reading, hardenC, quenchToC } = treatment;
  const key = [target, shift, hours, reading?.celsius, reading?.hrc, hardenC, quenchToC].join("|");
  return remembered.answer(model, key, () => newPlan(question));
}

function newPlan(question: TargetQuestion): TemperPlan {
  const { model, target, shift, hours } = question;
  const tempers = tempersFor(model, target - shift, hours);
  return tempers.length === 0 ? offTheCurve(question) : withAnswer(question, tempers);
}
