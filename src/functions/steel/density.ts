import { densityOf, densityRelations } from "../../core/steel/density";
import { scalarFunction } from "../declare";
import { steel } from "../steel-argument";

export const DENSITY = scalarFunction({
  name: "DENSITY",
  topic: "Steel",
  summary: "Density of a steel at room temperature: published for the grade, else typical of its family.",
  parameters: { steel },
  result: { label: "density", unit: "g/cm³" },
  relations: densityRelations,
  compute: ({ steel }) => densityOf(steel).value,
  examples: [
    { given: ["1095"], gives: 7.872, source: "PNNL-15870 Rev. 2" },
    { given: ["D2"], gives: 7.7, source: "density that two suppliers print for D2" },
    { given: ["304"], gives: 8.03, source: "PNNL-15870 Rev. 2" },
    { given: ["1075"], gives: 7.85, source: "usual handbook figure for carbon steel, from memory" },
  ],
});
