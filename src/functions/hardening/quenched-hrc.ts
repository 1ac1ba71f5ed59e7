import {
  HIGH_CARBON_HARDNESS,
  INITIAL_HARDNESS,
  quenchedHardness,
  quenchedRelations,
} from "../../core/hardening/quenched";
import { InvalidValue, NotAvailable } from "../../core/refusal";
import type { Steel } from "../../core/steel/steel";
import { temperedHardness, treatmentOf } from "../../core/tempering/tempered";
import { COOLEST_TEMPER_C } from "../../core/tempering/usual-tempers";
import { scalarFunction } from "../declare";
import { steel } from "../steel-argument";
import { usualHardenC } from "./harden-argument";
import { quenchToC } from "./quench-to-argument";

const USUAL = { hours: 2, cycles: 1, knownC: undefined, knownHrc: undefined } as const;

/**
 * What the steel has after the coolest temper. Tempering takes hardness away: where the relation for the quench lies
 * below the grade's tempering curve, the curve is nearer to the truth.
 */
function coolestTempered(steel: Steel, hardenC: number | undefined, quenchToC: number): number {
  try {
    const treatment = treatmentOf({ ...USUAL, hardenC, quenchToC });
    return temperedHardness(steel, COOLEST_TEMPER_C, treatment);
  } catch (refusal) {
    if (refusal instanceof NotAvailable || refusal instanceof InvalidValue) return 0;
    throw refusal;
  }
}

export const QUENCHED_HRC = scalarFunction({
  name: "QUENCHED_HRC",
  summary:
    "Hardness straight from the quench of a blade that hardened through. As quenched it is brittle: temper before use or straightening.",
  parameters: { steel, hardenC: usualHardenC, quenchToC },
  result: { label: "hardness as quenched", unit: "HRC" },
  relations: (steel) =>
    steel === null ? [INITIAL_HARDNESS, HIGH_CARBON_HARDNESS] : quenchedRelations(steel),
  compute: ({ steel, hardenC, quenchToC }) => {
    const quenched = quenchedHardness(steel, hardenC, quenchToC).hrc;
    const tempered = coolestTempered(steel, hardenC, quenchToC);
    return Math.round(Math.max(quenched, tempered) * 10) / 10;
  },
});
