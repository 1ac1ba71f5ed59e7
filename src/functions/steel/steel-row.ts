import { boundsOf } from "../../core/steel/bounds";
import type { Bounds } from "../../core/steel/composition";
import { limitsRelations } from "../../core/steel/composition-relations";
import { limitsStatus } from "../../core/steel/composition-text";
import { densityOf } from "../../core/steel/density";
import type { Steel } from "../../core/steel/steel";
import { choice } from "../choice";
import { type Answer, rowFunction } from "../declare";
import { steel } from "../steel-argument";

function limits({ low, high }: Bounds): Answer[] {
  return [low ?? "", high ?? ""];
}

function named({ name, grade }: Steel): Answer[] {
  if (grade === null) return [name, "analysis", "", "", ""];
  return [grade.designation, grade.system, grade.standard, grade.uns, grade.enNumber];
}

function row(steel: Steel): Answer[] {
  const carbon = limits(boundsOf(steel, "C"));
  const chromium = limits(boundsOf(steel, "Cr"));
  const status = steel.grade === null ? "as given" : limitsStatus(steel.grade);
  return [...named(steel), steel.family, ...carbon, ...chromium, densityOf(steel).value, status];
}

export const STEEL = rowFunction({
  name: "STEEL",
  summary: "What the library knows a steel by: names, standard, family, carbon and chromium limits, density.",
  parameters: {
    steel,
    show: choice({
      label: "show",
      help: 'With "card" the designation opens a card of the row, where Excel has cards; plain for more than 20 steels.',
      words: ["row", "card"],
    }),
  },
  card: { parameter: "show", word: "card" },
  result: [
    { label: "designation", unit: "text" },
    { label: "system", unit: "text" },
    { label: "standard", unit: "text" },
    { label: "UNS", unit: "text" },
    { label: "EN number", unit: "text" },
    { label: "family", unit: "text" },
    { label: "C low", unit: "mass %" },
    { label: "C high", unit: "mass %" },
    { label: "Cr low", unit: "mass %" },
    { label: "Cr high", unit: "mass %" },
    { label: "density", unit: "g/cm³" },
    { label: "source status", unit: "text" },
  ],
  relations: limitsRelations,
  compute: ({ steel }) => row(steel),
});
