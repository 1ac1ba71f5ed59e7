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
  topic: "Hardening",
  summary:
    "Hardness straight from the quench of a blade that hardened through. As quenched it is brittle: temper before use or straightening.",
  parameters: { steel, hardenC: usualHardenC },
  result: { label: "hardness as quenched", unit: "HRC" },
  relations: (steel) =>
    steel === null ? [INITIAL_HARDNESS, HIGH_CARBON_HARDNESS] : quenchedRelations(steel),
  compute: ({ steel, hardenC }) => Math.round(quenchedHardness(steel, hardenC).hrc * 10) / 10,
  examples: [
    {
      given: ["C 0.40 Mn 0.75"],
      gives: 56.3,
      within: 0.1,
      source: "ASTM A255 initial hardness at 0.40 % C, less a trace of retained austenite",
    },
    { given: ["C 0.20 Mn 0.75"], gives: 44.4, within: 0.1, source: "ASTM A255 initial hardness at 0.20 % C" },
    { given: ["1095", 800], gives: 66, within: 1, source: "Rockblade Kilns, 1095 in oil" },
    { given: ["O1", 802], gives: 65, within: 1, source: "Diamond Metals, O1 data page" },
    { given: ["D2"], gives: 63, source: "Crucible, D2 data sheet, 1010 °C" },
  ],
});
