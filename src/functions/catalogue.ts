import * as about from "./about";
import * as blade from "./blade";
import type { WorksheetFunction } from "./declare";
import { evidenceFunction } from "./evidence";
import * as hardening from "./hardening";
import * as hardness from "./hardness";
import * as inspection from "./inspection";
import * as mechanics from "./mechanics";
import * as money from "./money";
import { NAMESPACE } from "./namespace";
import * as run from "./run";
import * as shape from "./shape";
import * as steel from "./steel";
import * as stock from "./stock";
import * as tempering from "./tempering";
import { TOPICS, type Topic } from "./topics";

export { NAMESPACE };

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

/** The function of a name, with or without the namespace, in any case; `undefined` where there is none. */
export function functionNamed(name: string): ListedFunction | undefined {
  const upper = name.toUpperCase();
  const prefix = `${NAMESPACE}.`;
  return byName.get(upper.startsWith(prefix) ? upper.slice(prefix.length) : upper);
}
