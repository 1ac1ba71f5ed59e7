import { numberText } from "../quantity-text";
import { type Bounds, ELEMENTS, type Element } from "./composition";
import type { Grade, Steel } from "./steel";
import { hasAssumedSilicon, isHalfMaximum } from "./typical";
import { usualCarbonCaution } from "./usual-carbon";

/** How sure the limits of a grade are, in words; every row that rests on memory says so. */
export function limitsStatus({ status, recalled }: Grade): string {
  if (status === "recalled, high confidence") return "limits recalled";
  if (status !== "read") return "limits recalled, not confirmed";
  return recalled.length === 0 ? "limits read" : `limits read; those of ${recalled.join(", ")} recalled`;
}

/** The cautions that a steel's limits deserve: empty for an analysis and for limits that were read and fix the carbon. */
export function limitsCaution({ grade }: Steel): string {
  if (grade === null) return "";
  const status = grade.status === "read" ? "" : limitsStatus(grade);
  return [usualCarbonCaution(grade.designation), status].filter((part) => part !== "").join("; ");
}

function figures({ composition }: Steel, elements: readonly Element[]): string {
  return elements.map((element) => `${element} ${numberText(composition[element])}`).join(" ");
}

const NO_LIMITS: Bounds = { low: null, high: null };

function gradeText(steel: Steel, grade: Grade): string {
  const { composition } = steel;
  const parts: string[] = [];
  const present = ELEMENTS.filter((element) => composition[element] > 0);
  const half = ELEMENTS.filter((element) => isHalfMaximum(element, grade.limits[element] ?? NO_LIMITS));
  const zero = ELEMENTS.filter(
    (element) => composition[element] === 0 && grade.limits[element] !== undefined,
  );
  if (Number.isNaN(composition.C)) parts.push("carbon not fixed by the grade");
  const usual = usualCarbonCaution(grade.designation);
  if (usual !== "") parts.push(usual);
  parts.push(`${figures(steel, present)} mass %`);
  if (hasAssumedSilicon(grade)) parts.push("silicon assumed, the standard sets no limit");
  if (half.length > 0) parts.push(`${half.join(", ")} limited only upwards, taken as half`);
  if (zero.length > 0) parts.push(`${zero.join(", ")} limited only upwards, taken as 0`);
  parts.push(limitsStatus(grade));
  return parts.join("; ");
}

/** The composition that relations use for a steel, and how sure it is, as EVIDENCE prints it. */
export function compositionText(steel: Steel): string {
  if (steel.grade !== null) return gradeText(steel, steel.grade);
  const given = ELEMENTS.filter((element) => steel.composition[element] > 0);
  return `${figures(steel, given)} mass %, as given; other elements taken as 0`;
}
