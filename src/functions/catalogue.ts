import * as about from "./about";
import * as balance from "./balance";
import { TOPICS, type WorksheetFunction } from "./declare";
import { evidenceFunction } from "./evidence";
import * as hardening from "./hardening";
import * as hardness from "./hardness";
import * as inspection from "./inspection";
import * as money from "./money";
import * as plan from "./plan";
import * as run from "./run";
import * as shape from "./shape";
import * as steel from "./steel";
import * as stock from "./stock";
import * as tempering from "./tempering";

/** The namespace in front of every name: `BLADE.CARBON`. */
export const NAMESPACE = "BLADE";

const declared: readonly WorksheetFunction[] = [
  steel,
  hardening,
  tempering,
  inspection,
  hardness,
  shape,
  balance,
  stock,
  run,
  money,
  plan,
  about,
].flatMap((topic) => Object.values<WorksheetFunction>(topic));

/** Topics in the order of a run, names by the alphabet: the same list whatever bundles it. */
function inOrder(a: WorksheetFunction, b: WorksheetFunction): number {
  return TOPICS.indexOf(a.topic) - TOPICS.indexOf(b.topic) || (a.name < b.name ? -1 : 1);
}

/** Every worksheet function, in the order in which they are listed. */
export const catalogue: readonly WorksheetFunction[] = [...declared, evidenceFunction(declared)].sort(
  inOrder,
);

const byName = new Map(catalogue.map((fn) => [fn.name, fn]));

/** The function of a name without namespace, in any case; `undefined` where there is none. */
export function functionNamed(name: string): WorksheetFunction | undefined {
  return byName.get(name.toUpperCase());
}
