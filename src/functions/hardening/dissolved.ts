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
});
