import {
  HIGH_CARBON_HARDNESS,
  INITIAL_HARDNESS,
  quenchedHardness,
  quenchedRelations,
} from "../../core/hardening/quenched";
import { scalarFunction } from "../declare";
import { steel } from "../steel-argument";
import { usualHardenC } from "./harden-argument";

export const QUENCHED_HRC = scalarFunction({
  name: "QUENCHED_HRC",
  summary:
    "Hardness straight from the quench of a blade that hardened through. As quenched it is brittle: temper before use or straightening.",
  parameters: { steel, hardenC: usualHardenC },
  result: { label: "hardness as quenched", unit: "HRC" },
  relations: (steel) =>
    steel === null ? [INITIAL_HARDNESS, HIGH_CARBON_HARDNESS] : quenchedRelations(steel),
  compute: ({ steel, hardenC }) => Math.round(quenchedHardness(steel, hardenC).hrc * 10) / 10,
});
