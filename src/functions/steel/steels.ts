import { limitsRelations } from "../../core/steel/composition-relations";
import { familiesNamed, listGrades, systemsNamed } from "../../core/steel/list";
import { FAMILIES, SYSTEMS } from "../../core/steel/steel";
import { tableFunction } from "../declare";
import { textOrNothing } from "../parameters";

export const STEELS = tableFunction({
  name: "STEELS",
  summary: "Designations of the library, for a drop-down; narrowed by family, system or part of a name.",
  parameters: {
    family: textOrNothing({
      label: "family",
      kind: "family",
      help: `A family of steels or part of its name: ${FAMILIES.join(", ")}.`,
      accepts: `one of ${FAMILIES.join(", ")}, or part of one`,
      words: FAMILIES,
      find: (given) => familiesNamed(String(given)),
    }),
    system: textOrNothing({
      label: "system",
      kind: "system",
      help: `A system of designations or part of its name: ${SYSTEMS.join(", ")}.`,
      accepts: `one of ${SYSTEMS.join(", ")}, or part of one`,
      words: SYSTEMS,
      find: (given) => systemsNamed(String(given)),
    }),
    contains: textOrNothing({
      label: "contains",
      kind: "text",
      help: "Part of a designation, alias, UNS or EN number.",
      accepts: "part of a name",
      find: String,
    }),
  },
  result: [{ label: "designation", unit: "text" }],
  relations: limitsRelations,
  compute: ({ family, system, contains }) =>
    listGrades({ families: family, systems: system, contains }).map(({ designation }) => [designation]),
});
