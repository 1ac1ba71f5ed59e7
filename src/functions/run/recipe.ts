import { heatTreatmentRelations } from "../../core/hardening/heat-treatment";
import { findQuench } from "../../core/hardening/quench-media";
import { readHardness } from "../../core/hardness/read-hardness";
import { checkHardenable, RECIPE_RULE, recipeText } from "../../core/run/recipe";
import { temperingRelations } from "../../core/tempering/relations";
import { temperFor } from "../../core/tempering/temper-for";
import { scalarFunction } from "../declare";
import { usualHardenC } from "../hardening/harden-argument";
import { textOrNothing } from "../parameters";
import { steel } from "../steel-argument";

/** The temper of TEMPER_FOR where nothing else is said. */
const USUAL_TEMPER = { hours: 2, cycles: 1 };

export const RECIPE = scalarFunction({
  name: "RECIPE",
  summary:
    "Recipe of a line in words for LOADS: family, hardening window, quench, temper; lines that read the same may share a load.",
  parameters: {
    steel,
    target: textOrNothing({
      label: "target HRC",
      kind: "hardness requirement",
      help: 'Hardness wanted in HRC: 60, "58-60" or "60 ±1"; the temper follows from it.',
      accepts: 'a hardness in HRC from 20 to 68, or a span in quotes such as "58-60"',
      find: (given) => readHardness(given).aim,
    }),
    quench: textOrNothing({
      label: "quench",
      kind: "quench",
      help: "Quench, one of the words that QUENCHES() lists.",
      accepts: 'a quench such as "fast oil"; QUENCHES() lists them',
      find: findQuench,
    }),
    hardenC: usualHardenC,
  },
  result: { label: "recipe", unit: "text" },
  relations: (steel) => [RECIPE_RULE, ...heatTreatmentRelations(steel), ...temperingRelations(steel)],
  compute: ({ steel, target, quench, hardenC }) => {
    checkHardenable(steel, quench);
    const temper = target === undefined ? undefined : temperFor(steel, target, { ...USUAL_TEMPER, hardenC });
    const temperC = temper === undefined ? undefined : Math.round(temper);
    return recipeText({ steel, quench, hardenC, temperC });
  },
});
