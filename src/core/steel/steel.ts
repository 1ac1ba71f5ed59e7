import type { SourceKey } from "../sources";
import type { Bounds, Composition, Element } from "./composition";

/** Families of the grade table; relations choose their form by them. */
export const FAMILIES = [
  "plain carbon",
  "low alloy",
  "cold work",
  "hot work",
  "high speed",
  "martensitic stainless",
  "austenitic stainless",
  "ferritic stainless",
] as const;

export type Family = (typeof FAMILIES)[number];

/** Systems of designation in the grade table. */
export const SYSTEMS = ["SAE/AISI", "AISI tool", "AISI stainless", "EN", "JIS", "GB", "GOST"] as const;

export type System = (typeof SYSTEMS)[number];

/** One standard grade as the grade table holds it. */
export interface Grade {
  /** As the standard prints it; where two systems print the same name, with the system in front: "GB 45". */
  readonly designation: string;
  /** Other names that find it. */
  readonly aliases: readonly string[];
  /** Whose standard it is. */
  readonly system: System;
  /** Number of the standard that sets its limits. */
  readonly standard: string;
  /** UNS number, "" where it has none. */
  readonly uns: string;
  /** EN number, "" where it has none. */
  readonly enNumber: string;
  /** Kind of steel that relations ask for. */
  readonly family: Family;
  /** By element, heat analysis [mass %]; what is not listed is not specified. */
  readonly limits: Readonly<Partial<Record<Element, Bounds>>>;
  /** At room temperature [g/cm³]; `null` where none is published for this grade. */
  readonly density: number | null;
  /** Where the density was printed; `null` without one. */
  readonly densitySource: SourceKey | null;
  /** "read" where carbon and the main elements were seen in a text, else how sure the recall is. */
  readonly status:
    | "read"
    | "recalled, high confidence"
    | "recalled, medium confidence"
    | "recalled, low confidence";
  /** Elements of a read row whose limits were recalled. */
  readonly recalled: readonly Element[];
  /** Where the limits were read; for a recalled row, the standard recalled. */
  readonly source: SourceKey;
}

/** What every function is handed for its steel argument: a grade of the table, or an analysis. */
export interface Steel {
  /** The designation as its standard prints it, or the analysis as given. */
  readonly name: string;
  /** `null` for an analysis. */
  readonly grade: Grade | null;
  /** Kind of steel that relations ask for. */
  readonly family: Family;
  /** Elements that an analysis names, also with 0; left out for a grade. */
  readonly stated?: readonly Element[];
  /**
   * Composition that relations use. For a grade: carbon as the designation encodes it, else the
   * middle of its range; the other elements the middle; a maximum-only residual 0, silicon
   * and manganese limited only upwards half of the maximum; plain carbon
   * steel without a silicon limit 0.22 % Si. Carbon is NaN where the grade does not fix it: go
   * through `carbonOf`, which refuses then.
   */
  readonly composition: Composition;
}
