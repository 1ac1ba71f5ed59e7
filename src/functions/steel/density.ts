import { densityOf, densityRelations } from "../../core/steel/density";
import { scalarFunction } from "../declare";
import { steel } from "../steel-argument";

export const DENSITY = scalarFunction({
  name: "DENSITY",
  summary: "Density of a steel at room temperature: published for the grade, else typical of its family.",
  parameters: { steel },
  result: { label: "density", unit: "g/cm³" },
  relations: densityRelations,
  compute: ({ steel }) => densityOf(steel).value,
});
