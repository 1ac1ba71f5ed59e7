import table from "../../data/steel/kin.json";
import { number, records, text } from "../table";
import type { Steel } from "./steel";

const lenders = new Map(
  records(table, { grade: text, lender: text, wider: number }).map((row) => [row.grade, row]),
);

/** A near grade whose published figures stand in, and what is said with them. */
export interface Lender {
  readonly designation: string;
  /** How much wider the band of a hardness is [HRC]. */
  readonly wider: number;
  readonly caution: string;
}

/** The near grade that lends its published figures to a steel; `undefined` where there is none. */
export function lenderOf({ grade }: Steel): Lender | undefined {
  return lenderNamed(grade?.designation ?? "");
}

/** The same by the name of a grade. */
export function lenderNamed(designation: string): Lender | undefined {
  const held = lenders.get(designation);
  if (held === undefined) return undefined;
  const { lender, wider } = held;
  return {
    designation: lender,
    wider,
    caution: `figures of ${lender} lent to its near kin ${held.grade}, not measured on it`,
  };
}

/** Where figures are looked up: under the grade's own name where any are held, else under that of its lender. */
export function heldName<T>(steel: Steel, held: (designation: string) => T | undefined): T | undefined {
  const own = held(steel.grade?.designation ?? "");
  if (own !== undefined) return own;
  const lender = lenderOf(steel);
  return lender === undefined ? undefined : held(lender.designation);
}
