import { NotAvailable } from "../refusal";
import { type SteelAsked, steelAsked } from "./asked";
import { boundsOf } from "./bounds";
import type { Bounds } from "./composition";
import { classesOf } from "./grades";
import { boundsText } from "./limits";
import type { Grade, Steel } from "./steel";
import { hasOpenCarbon } from "./typical";

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

/** The standard prints one range a class for M2, and one range over all suffixes for W1. */
function printedLimits(grade: Grade): string {
  const classes = classesOf(grade).filter(({ designation }) => designation.endsWith(")"));
  const printed = classes.length > 0 ? classes : [grade];
  return printed.map(({ limits }) => boundsText(limits.C ?? { low: null, high: null })).join(" or ");
}

function refuseOpen(grade: Grade): never {
  throw new NotAvailable(
    `${grade.designation} does not fix its carbon: ${grade.standard} sets ${printedLimits(grade)} mass % C; ${advice(grade)}`,
  );
}

/**
 * Carbon that a steel states.
 *
 * @returns Mass % C: as the designation encodes it, else the middle of the limits; as given for an analysis.
 * @throws NotAvailable where the grade does not fix its carbon, with the limit and what to give instead.
 */
export function statedCarbon(steel: Steel): number {
  const { grade } = steel;
  if (grade !== null && hasOpenCarbon(grade)) refuseOpen(grade);
  return carbonOf(steel);
}

/**
 * Carbon that relations use.
 *
 * @param steel - A grade or an analysis, or its name.
 * @returns As stated; where the grade leaves it open, what it is usually sold with [mass %]
 * @throws NotAvailable where no usual carbon of such a grade is held either.
 * Error: a heat lies anywhere within the limits of its grade. Source: the standard of the grade, as STEEL names it.
 */
export function carbonOf(steel: SteelAsked): number {
  const { composition, grade } = steelAsked(steel);
  if (Number.isNaN(composition.C) && grade !== null) refuseOpen(grade);
  return composition.C;
}

/**
 * Carbon limits of the standard; for an analysis both are the figure given.
 *
 * @param steel - A grade or an analysis, or its name.
 * @returns [mass %]; null where the standard gives no limit on that side.
 * Limits: nothing is refused. Error: none, as printed. Source: the standard of the grade, as STEEL names it.
 */
export function carbonBounds(steel: SteelAsked): Bounds {
  steel = steelAsked(steel);
  return boundsOf(steel, "C");
}

/**
 * One limit of the standard on carbon, mass %.
 *
 * @throws NotAvailable where the standard sets none on that side.
 */
export function carbonLimit(steel: Steel, side: "low" | "high"): number {
  const limit = carbonBounds(steel)[side];
  if (limit !== null) return limit;
  const { designation, standard, limits } = steel.grade as Grade;
  const other = boundsText(limits.C ?? { low: null, high: null });
  const word = side === "low" ? "minimum" : "maximum";
  throw new NotAvailable(`${designation} has no carbon ${word}: ${standard} sets ${other} mass % C`);
}
