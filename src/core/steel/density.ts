import table from "../../data/steel/density-by-family.json";
import type { Relation } from "../relation";
import type { SourceKey } from "../sources";
import { number, records, sourceKey, text } from "../table";
import { type SteelAsked, steelAsked } from "./asked";
import type { Steel } from "./steel";

/** A density with the relation it rests on. */
export interface Density {
  /** At room temperature [g/cm³]. */
  readonly value: number;
  /** What the figure rests on. */
  readonly relation: Relation;
}

/** Sources print figures that differ by this much for one grade: 7.80, 7.85 and 7.872 for 1045. */
const MIN_ERROR = 0.05;

const families = records(table, { family: text, low: number, high: number, seen: text, typical: number });

type FamilyDensity = (typeof families)[number];

function relation(title: string, source: SourceKey, locator: string, size: number, kind: string): Relation {
  const error = { size, unit: "g/cm³", kind };
  const output = { label: "density", unit: "g/cm³" };
  return { title, source, locator, evidence: "compiled", inputs: {}, output, error };
}

function publishedRelation(source: SourceKey, locator: string): Relation {
  const kind = "difference between published values of one grade";
  return relation("density published for the grade", source, locator, MIN_ERROR, kind);
}

function familyRelation(locator: string, size: number): Relation {
  const kind = "span of the values known for the family";
  return relation("density typical of the family", sourceKey(table.source), locator, size, kind);
}

function spanOf({ low, high, typical }: FamilyDensity): number {
  return Number(Math.max(MIN_ERROR, high - typical, typical - low).toFixed(3));
}

/** Chromium splits the cold work family and tungsten the high speed one. */
function familyName({ family, composition }: Steel): string {
  const { Cr, W } = composition;
  if (family === "cold work") {
    if (Cr >= 10) return "cold work, 10 % chromium and over";
    return Cr >= 4 ? "cold work, 4 to 10 % chromium" : "cold work, under 4 % chromium";
  }
  if (family !== "high speed") return family;
  return W < 12 ? "high speed, under 12 % tungsten" : "high speed, 12 % tungsten and over";
}

function familyDensity(steel: Steel): Density {
  const name = familyName(steel);
  const held = families.find(({ family }) => family === name);
  if (held === undefined) throw new Error(`no density for ${name}`);
  return { value: held.typical, relation: familyRelation(name, spanOf(held)) };
}

/**
 * Density of a steel at room temperature: the value published for the grade, else the value typical of its family.
 *
 * @param steel - A grade or an analysis, or its name.
 * @returns A record: its `value` [g/cm³], and the relation it rests on.
 * Limits: nothing is refused. Error and source: those of the relation in the answer.
 */
export function densityOf(steel: SteelAsked): Density {
  steel = steelAsked(steel);
  const { grade } = steel;
  if (grade === null || grade.density === null || grade.densitySource === null) return familyDensity(steel);
  return { value: grade.density, relation: publishedRelation(grade.densitySource, grade.designation) };
}

/** The relation that a steel's density rests on; both kinds where no steel is given. */
export function densityRelations(steel: Steel | null): readonly Relation[] {
  if (steel !== null) return [densityOf(steel).relation];
  const widest = Math.max(...families.map(spanOf));
  return [
    publishedRelation("std-grade-table", "density by grade"),
    familyRelation("one row a family; the widest span is given", widest),
  ];
}
