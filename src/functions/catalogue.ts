import { HEAT_TRANSFER_MEDIA } from "../core/hardening/heat-transfer";
import { quenchSection } from "../core/hardening/section-quench";
import { sectionPoints } from "../core/hardening/section-report";
import { bladeOf } from "../core/mechanics/beam";
import { heldBlade } from "../core/mechanics/flex";
import { findGrind, GRINDS } from "../core/shape/grinds";
import { profileOf } from "../core/shape/strips";
import { brittleRanges } from "../core/tempering/embrittlement";
import { fittedCurves } from "../core/tempering/fits";
import { temperSpan } from "../core/tempering/temper-limits";
import { temperModel } from "../core/tempering/tempering-model";
import * as about from "./about";
import { readArgument, readArguments } from "./arguments";
import * as blade from "./blade";
import type { WorksheetFunction } from "./declare";
import { evidenceFunction } from "./evidence";
import * as hardening from "./hardening";
import { sectionInputs, sectionParameters } from "./hardening/section-arguments";
import * as hardness from "./hardness";
import * as inspection from "./inspection";
import { parseMeasure } from "./measure";
import * as mechanics from "./mechanics";
import * as money from "./money";
import * as run from "./run";
import * as shape from "./shape";
import { stationsOf } from "./shape/station-arguments";
import * as steel from "./steel";
import * as stock from "./stock";
import * as tempering from "./tempering";
import { TOPICS, type Topic } from "./topics";

export { NAMESPACE } from "./namespace";

/** The functions of each topic: whatever the folder of the topic exports. */
const byTopic: Readonly<Record<Topic, Readonly<Record<string, WorksheetFunction>>>> = {
  Steel: steel,
  Hardening: hardening,
  Tempering: tempering,
  Hardness: hardness,
  Inspection: inspection,
  Blade: blade,
  Shape: shape,
  Mechanics: mechanics,
  Stock: stock,
  Run: run,
  Money: money,
  About: about,
};

/** A declaration with the topic under which it is listed. */
export type ListedFunction = WorksheetFunction & { readonly topic: Topic };

function listed(topic: Topic, functions: readonly WorksheetFunction[]): ListedFunction[] {
  return functions.map((fn) => ({ ...fn, topic }));
}

const declared = TOPICS.flatMap((topic) => listed(topic, Object.values(byTopic[topic])));

/** Topics in the order of a run, names by the alphabet: the same list whatever bundles it. */
function inOrder(a: ListedFunction, b: ListedFunction): number {
  return TOPICS.indexOf(a.topic) - TOPICS.indexOf(b.topic) || (a.name < b.name ? -1 : 1);
}

/** Every worksheet function, in the order in which they are listed. */
export const catalogue: readonly ListedFunction[] = [
  ...declared,
  ...listed("About", [evidenceFunction(declared)]),
].sort(inOrder);

const byName = new Map(catalogue.map((fn) => [fn.name, fn]));

/** The function of a name without namespace, in any case; `undefined` where there is none. */
export function functionNamed(name: string): ListedFunction | undefined {
  return byName.get(name.toUpperCase());
}

/**
 * What drawings need beyond the answers of cells, handed out from here: a bundler that finds them used
 * by two bundles one by one takes the functions bundle to pieces, which costs 1.5 % of it.
 */
export const FOR_DRAWINGS = {
  HEAT_TRANSFER_MEDIA,
  GRINDS,
  bladeOf,
  brittleRanges,
  findGrind,
  fittedCurves,
  heldBlade,
  parseMeasure,
  profileOf,
  quenchSection,
  readArguments,
  sectionInputs,
  sectionParameters,
  sectionPoints,
  stationsOf,
  readArgument,
  temperModel,
  temperSpan,
} as const;
