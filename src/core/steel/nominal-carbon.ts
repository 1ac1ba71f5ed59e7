import table from "../../data/steel/decode-rules.json";
import type { SourceKey } from "../sources";
import { oneOf, records, sourceKey, text } from "../table";
import { readName } from "./decode/forms";
import { type Grade, SYSTEMS, type System } from "./steel";

/** Where the rule comes from by which a system writes carbon into its names. */
export interface CarbonRule {
  readonly source: SourceKey;
  readonly locator: string;
}

/** The systems whose names state carbon. */
export const CARBON_RULES: ReadonlyMap<System, CarbonRule> = new Map(
  records(table, { system: oneOf(SYSTEMS), source: sourceKey, locator: text }).map(
    ({ system, source, locator }) => [system, { source, locator }],
  ),
);

const SYSTEM_IN_FRONT = /^(?:GB|GOST|AISI|SAE|EN|JIS) /;

/** The designation as its own standard prints it, without the system that tells twins apart. */
export function bareName({ designation }: Grade): string {
  return designation.replace(SYSTEM_IN_FRONT, "");
}

/**
 * Carbon that the designation itself states.
 *
 * @returns Mass % C, or null where the system writes no carbon into this name, where the standard
 *   sets one limit only, or where the figure would lie outside the limits of the grade.
 */
export function encodedCarbon(grade: Grade): number | null {
  const { low = null, high = null } = grade.limits.C ?? {};
  if (low === null || high === null || !CARBON_RULES.has(grade.system)) return null;
  const carbon = readName(bareName(grade), grade.system, grade.standard)?.parts[0];
  if (carbon === undefined || carbon.content === null || carbon.isAbout) return null;
  return carbon.content >= low && carbon.content <= high ? carbon.content : null;
}
