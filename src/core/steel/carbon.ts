import { NotAvailable } from "../refusal";
import type { Relation } from "../relation";
import type { Bounds } from "./composition";
import { classesOf } from "./grades";
import { boundsText } from "./limits";
import { CARBON_RULES, encodedCarbon } from "./nominal-carbon";
import type { Grade, Steel } from "./steel";

const FORM = 'an analysis from the mill certificate, in the form "C 0.95 Mn 0.25 Si 0.25"';

/** Grades with both limits that are sold where a minimum alone leaves the carbon open; all in the table. */
const NARROWER: Readonly<Record<string, string>> = {
  "420": "SUS420J1, SUS420J2, X20Cr13, X30Cr13, X39Cr13 or X46Cr13",
};

function advice(grade: Grade): string {
  const classes = classesOf(grade).map(({ designation }) => designation);
  if (classes.length > 0) return `name the carbon class (${classes.join(", ")}) or give ${FORM}`;
  const narrower = NARROWER[grade.designation];
  return narrower === undefined ? `give ${FORM}` : `name the grade sold (${narrower}) or give ${FORM}`;
}

function refuseOpen(grade: Grade): never {
  const bounds = grade.limits.C ?? { low: null, high: null };
  throw new NotAvailable(
    `${grade.designation} does not fix its carbon: ${grade.standard} sets ${boundsText(bounds)} mass % C; ${advice(grade)}`,
  );
}

/**
 * Carbon that relations use.
 *
 * @returns Mass % C: as the designation encodes it, else the middle of the limits; as given for an analysis.
 * @throws NotAvailable where the grade does not fix its carbon, with the limit and what to give instead.
 */
export function carbonOf({ composition, grade }: Steel): number {
  if (Number.isNaN(composition.C) && grade !== null) refuseOpen(grade);
  return composition.C;
}

/** Carbon limits of the standard, mass %; for an analysis both are the figure given. */
export function carbonBounds({ composition, grade }: Steel): Bounds {
  if (grade === null) return { low: composition.C, high: composition.C };
  return grade.limits.C ?? { low: null, high: null };
}

const OUTPUT = { label: "carbon", unit: "mass %" };
const SPREAD = "a heat may lie anywhere within the limits of its standard";

function encodedRelation(grade: Grade): Relation | null {
  const rules = CARBON_RULES[grade.system];
  if (rules === undefined) return null;
  const { source, locator } = rules;
  const error = { size: halfSpan(grade), unit: "mass %", kind: SPREAD };
  const title = `carbon as ${grade.system} designations encode it`;
  return { title, source, locator, evidence: "standard", inputs: {}, output: OUTPUT, error };
}

/** The farther limit from the nominal figure. */
function halfSpan(grade: Grade): number | null {
  const nominal = encodedCarbon(grade);
  const { low = null, high = null } = grade.limits.C ?? {};
  if (low === null || high === null) return null;
  const centre = nominal ?? (low + high) / 2;
  return Number(Math.max(high - centre, centre - low).toFixed(3));
}

/** The relation that a steel's carbon figure rests on; null for an analysis, which rests on its certificate. */
export function carbonRelation({ grade }: Steel): Relation | null {
  if (grade === null) return null;
  if (encodedCarbon(grade) !== null) return encodedRelation(grade);
  return {
    title: "carbon as the middle of the standard's limits",
    source: grade.source,
    locator: grade.standard,
    evidence: "compiled",
    inputs: {},
    output: OUTPUT,
    error: { size: halfSpan(grade), unit: "mass %", kind: SPREAD },
  };
}
