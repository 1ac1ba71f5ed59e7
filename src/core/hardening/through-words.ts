/** Whether a section hardens through. */
export type ThroughWord = "hardens through" | "marginal" | "does not harden through";

/** Fully hard: pearlite that costs no more than a Rockwell point or two. */
const FULLY_HARD = 0.05;
/** Half martensite, where the hardness falls off steeply. */
const HALF_HARD = 0.5;

function wordFor(value: number, full: number, half: number): ThroughWord {
  if (value <= full) return "hardens through";
  return value <= half ? "marginal" : "does not harden through";
}

/** The word for the likely share of pearlite at the worst place, 0 to 1. */
export function pearliteWord(most: number): ThroughWord {
  return wordFor(most, FULLY_HARD, HALF_HARD);
}

/** The same word for a plate [mm], held against the thicknesses at which its middle has those shares of pearlite. */
export function plateWord(thicknessMm: number, fullyHardMm: number, halfHardMm: number): ThroughWord {
  return wordFor(thicknessMm, fullyHardMm, halfHardMm);
}
