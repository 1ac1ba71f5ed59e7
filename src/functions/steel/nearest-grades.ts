import { limitsRelations } from "../../core/steel/composition-relations";
import { NEARNESS, similarGrades } from "../../core/steel/similar-grades";
import { tableFunction } from "../declare";
import { steel } from "../steel-argument";

export const NEAREST_GRADES = tableFunction({
  name: "NEAREST_GRADES",
  summary:
    "Grades whose limits lie nearest, best first, with the element in which each differs most: near, never the same steel.",
  parameters: { steel },
  result: [
    { label: "designation", unit: "text" },
    { label: "system", unit: "text" },
    { label: "element that differs most", unit: "text" },
    { label: "by how much", unit: "mass %" },
  ],
  relations: (steel) => [NEARNESS, ...limitsRelations(steel)],
  compute: ({ steel }) =>
    similarGrades(steel).map(({ grade, element, difference }) => [
      grade.designation,
      grade.system,
      element ?? "none in the middle of the limits",
      difference,
    ]),
});
