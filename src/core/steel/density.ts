import table from "../../data/steel/density-by-family.json";
import type { Relation } from "../relation";
import type { SourceKey } from "../sources";
import type { Steel } from "./steel";

/** A density with the relation it rests on. */
export interface Density {
  /** g/cm³ at room temperature. */
  readonly value: number;
  readonly relation: Relation;
}

/** Sources print figures that differ by this much for one grade: 7.80, 7.85 and 7.872 for 1045. */
const LEAST_ERROR = 0.05;

function relation(title: string, source: SourceKey, locator: string, size: number, kind: string): Relation {
  const error = { size, unit: "g/cm³", kind };
  const output = { label: "density", unit: "g/cm³" };
  return { title, source, locator, evidence: "compiled", inputs: {}, output, error };
}

/** Chromium splits the cold work family and tungsten the high speed one. */
function familyRow({ family, composition }: Steel): string {
  const { Cr, W } = composition;
  if (family === "cold work") {
    if (Cr >= 10) return "cold work, 10 % chromium and over";
    return Cr >= 4 ? "cold work, 4 to 10 % chromium" : "cold work, under 4 % chromium";
  }
  if (family !== "high speed") return family;
  return W < 12 ? "high speed, under 12 % tungsten" : "high speed, 12 % tungsten and over";
}

function familyDensity(steel: Steel): Density {
  const name = familyRow(steel);
  const row = table.rows.find(([family]) => family === name);
  if (row === undefined) throw new Error(`no density for ${name}`);
  const [, low, high, , value] = row as [string, number, number, string, number];
  const size = Number(Math.max(LEAST_ERROR, high - value, value - low).toFixed(3));
  const kind = "span of the values known for the family";
  const source = table.source as SourceKey;
  return { value, relation: relation("density typical of the family", source, name, size, kind) };
}

function publishedDensity(value: number, source: SourceKey, designation: string): Density {
  const kind = "difference between published values of one grade";
  return {
    value,
    relation: relation("density published for the grade", source, designation, LEAST_ERROR, kind),
  };
}

/**
 * Density of a steel at room temperature, g/cm³: the value published for the grade, else the value
 * typical of its family.
 */
export function densityOf(steel: Steel): Density {
  const { grade } = steel;
  if (grade === null || grade.density === null || grade.densitySource === null) return familyDensity(steel);
  return publishedDensity(grade.density, grade.densitySource, grade.designation);
}
