import {
  HIGH_CARBON_HARDNESS,
  INITIAL_HARDNESS,
  quenchedHardness,
  quenchedRelations,
} from "../../core/hardening/quenched";
import { scalarFunction } from "../declare";
import { steel } from "../steel-argument";
import { usualHardenC } from "./harden-argument";
import { quenchToC } from "./quench-to-argument";

export const QUENCHED_HRC = scalarFunction({
  name: "QUENCHED_HRC",
  summary:
    "Hardness straight from the quench of a blade that hardened through. As quenched it is brittle: temper before use or straightening.",
  parameters: { steel, hardenC: usualHardenC, quenchToC },
  result: { label: "hardness as quenched", unit: "HRC" },
  relations: (steel) =>
    steel === null ? [INITIAL_HARDNESS, HIGH_CARBON_HARDNESS] : quenchedRelations(steel),
  compute: ({ steel, hardenC, quenchToC }) =>
    Math.round(quenchedHardness(steel, hardenC, quenchToC).hrc * 10) / 10,
});
