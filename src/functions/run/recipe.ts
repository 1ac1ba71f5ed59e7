import { heatTreatmentRelations } from "../../core/hardening/heat-treatment";
import { ROOM_C } from "../../core/hardening/sub-zero";
import { NotAvailable, Refusal } from "../../core/refusal";
import { lineRecipe } from "../../core/run/line-recipe";
import { RECIPE_RULE } from "../../core/run/recipe";
import { temperingRelations } from "../../core/tempering/relations";
import { scalarFunction } from "../declare";
import { usualHardenC } from "../hardening/harden-argument";
import { steel } from "../steel-argument";
import { heatHeadings } from "./heat-headings";

/** What RECIPE does not ask about. */
const UNTOLD = {
  use: undefined,
  length: undefined,
  thickness: undefined,
  sectionMm: undefined,
  chosenC: undefined,
  knownC: undefined,
  knownHrc: undefined,
  quenchToC: ROOM_C,
  subZeroHours: undefined,
  clayMm: undefined,
  clayFromMm: undefined,
} as const;

export const RECIPE = scalarFunction({
  name: "RECIPE",
  summary:
    "Recipe of a line in words for LOADS: family, hardening window, quench, temper; lines that read the same may share a load.",
  parameters: {
    steel,
    target: heatHeadings.target,
    quench: heatHeadings.quench,
    hardenC: usualHardenC,
    temperHours: heatHeadings.temperHours,
    temperCycles: heatHeadings.temperCycles,
  },
  result: { label: "recipe", unit: "text" },
  relations: (steel) => [RECIPE_RULE, ...heatTreatmentRelations(steel), ...temperingRelations(steel)],
  compute: ({ steel, quench, ...given }) => {
    const { temper, text } = lineRecipe({ ...UNTOLD, steel, quench, ...given });
    const { word, sentence } = temper.hardening;
    if (word === "does not harden") throw new NotAvailable(sentence);
    if (temper.celsius instanceof Refusal) throw temper.celsius;
    return text;
  },
});
