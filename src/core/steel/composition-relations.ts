import type { Relation } from "../relation";
import type { SourceKey } from "../sources";
import { allCarbonRelations, carbonRelation } from "./carbon-relations";
import { limitsStatus } from "./composition-text";
import { noteOf } from "./notes";
import type { Steel } from "./steel";

const KIND = "limits bind the heat; a piece may exceed them by the permitted variation";

function limits(of: string, source: SourceKey, locator: string): Relation {
  return {
    title: `chemical limits of ${of}`,
    source,
    locator,
    evidence: "standard",
    inputs: {},
    output: { label: "limits by heat analysis", unit: "mass %" },
    error: { size: null, unit: "mass %", kind: KIND },
  };
}

/** The chemical limits of a grade with what is known about them; null for an analysis. */
export function limitsRelation({ grade }: Steel): Relation | null {
  if (grade === null) return null;
  const relation = limits(grade.designation, grade.source, grade.standard);
  const evidence = grade.status === "read" ? "standard" : "compiled";
  const status = limitsStatus(grade).replace(/^l/, "L");
  const note = [status, noteOf(grade)].filter((part) => part !== "").join(". ");
  return { ...relation, evidence, note };
}

/** The relations that a steel's carbon rests on; all of them where no steel is given. */
export function carbonRelations(steel: Steel | null): readonly Relation[] {
  if (steel === null)
    return [...allCarbonRelations(), limits("the grade", "std-grade-table", "one row a grade")];
  return [carbonRelation(steel), limitsRelation(steel)].filter((relation) => relation !== null);
}

/** The relations that a steel's limits rest on; the table as a whole where no steel is given. */
export function limitsRelations(steel: Steel | null): readonly Relation[] {
  if (steel === null) return [limits("the grade", "std-grade-table", "one row a grade")];
  return [limitsRelation(steel)].filter((relation) => relation !== null);
}
