import type { Relation } from "../relation";
import { CARBON_RULES, type CarbonRule, encodedCarbon } from "./nominal-carbon";
import type { Grade, Steel } from "./steel";

const OUTPUT = { label: "carbon", unit: "mass %" };
const SPREAD = "a heat may lie anywhere within the limits of its standard";

function encodedRelation(system: string, { source, locator }: CarbonRule, size: number | null): Relation {
  return {
    title: `carbon as ${system} designations encode it`,
    source,
    locator,
    evidence: "standard",
    inputs: {},
    output: OUTPUT,
    error: { size, unit: "mass %", kind: SPREAD },
  };
}

function middleRelation(
  { source, standard }: Pick<Grade, "source" | "standard">,
  size: number | null,
): Relation {
  return {
    title: "carbon as the middle of the standard's limits",
    source,
    locator: standard,
    evidence: "compiled",
    inputs: {},
    output: OUTPUT,
    error: { size, unit: "mass %", kind: SPREAD },
  };
}

/** Distance from the figure used to the farther limit: where a heat may still lie. */
function reach(grade: Grade): number | null {
  const { low = null, high = null } = grade.limits.C ?? {};
  if (low === null || high === null) return null;
  const figure = encodedCarbon(grade) ?? (low + high) / 2;
  return Number(Math.max(high - figure, figure - low).toFixed(3));
}

/** The relation that a steel's carbon figure rests on; null for an analysis, which rests on its certificate. */
export function carbonRelation({ grade }: Steel): Relation | null {
  if (grade === null) return null;
  const rule = CARBON_RULES.get(grade.system);
  if (rule === undefined || encodedCarbon(grade) === null) return middleRelation(grade, reach(grade));
  return encodedRelation(grade.system, rule, reach(grade));
}

/** Every relation that a carbon figure may rest on: one a system of designations, and the middle of the limits. */
export function allCarbonRelations(): readonly Relation[] {
  const encoded = [...CARBON_RULES].map(([system, rule]) => encodedRelation(system, rule, null));
  return [...encoded, middleRelation({ source: "std-grade-table", standard: "limits of the grade" }, null)];
}
