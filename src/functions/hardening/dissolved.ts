import {
  DISSOLVED_ALL,
  DISSOLVED_CEMENTITE,
  dissolvedAt,
  dissolvedRelations,
} from "../../core/hardening/dissolved";
import { DISSOLVED_GRADE_SERIES, DISSOLVED_HIGH_CHROMIUM } from "../../core/hardening/high-chromium";
import { rowFunction } from "../declare";
import { steel } from "../steel-argument";
import { hardenC } from "./harden-argument";

const ALL = [DISSOLVED_ALL, DISSOLVED_CEMENTITE, DISSOLVED_HIGH_CHROMIUM, DISSOLVED_GRADE_SERIES];

function rounded(value: number, places: number): number {
  return Number(value.toFixed(places));
}

export const DISSOLVED = rowFunction({
  name: "DISSOLVED",
  topic: "Hardening",
  summary:
    "Carbon and chromium in solution when the blade goes into the quench; what carbides keep does not harden it.",
  parameters: { steel, hardenC },
  result: [
    { label: "carbon", unit: "mass %" },
    { label: "chromium", unit: "mass %" },
  ],
  relations: (steel) => (steel === null ? ALL : dissolvedRelations(steel)),
  compute: ({ steel, hardenC }) => {
    const { carbon, chromium } = dissolvedAt(steel, hardenC);
    return [rounded(carbon, 3), rounded(chromium, 2)];
  },
  examples: [
    {
      given: ["C 1.0 Cr 1.45 Mn 0.35 Si 0.25", 845],
      gives: [0.871, 1.23],
      within: 0.03,
      source: "equilibrium calculation of 52100: 0.867 % C, 1.23 % Cr",
    },
    { given: ["1095", 760], gives: [0.827, 0], within: 0.002, source: "equilibrium calculation of 1095" },
    {
      given: ["5160", 830],
      gives: [0.6, 0.8],
      source: "above Ac3 all is in solution: the grade's own figures",
    },
    { given: ["D2", 1020], gives: [0.569, 6.5], source: "equilibrium calculation of D2: not stainless" },
    { given: ["440C", 1040], gives: [0.376, 12], source: "equilibrium calculation of 440C" },
  ],
});
