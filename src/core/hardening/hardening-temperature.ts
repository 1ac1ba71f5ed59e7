import table from "../../data/hardening/hardening-temperatures.json";
import type { SourceKey } from "../sources";
import type { Steel } from "../steel/steel";

/** The hardening temperature used where none is given. */
export interface UsualHardening {
  readonly celsius: number;
  /** `null` where no window is held for the grade and the figure is the handbook's for its kind. */
  readonly source: SourceKey | null;
}

const windows = new Map(
  (table.rows as [string, number, number, string][]).map(([grade, low, high, source]) => [
    grade,
    { celsius: (low + high) / 2, source: source as SourceKey },
  ]),
);

/** Chromium from which the bearing-steel temperature stands for a steel without a window of its own. */
const BEARING_CHROMIUM = 0.9;

/**
 * The middle of the grade's published hardening window; else 815 °C as for plain high-carbon
 * steel, and 845 °C as for bearing steel from 0.9 % Cr.
 */
export function usualHardening(steel: Steel): UsualHardening {
  const held = windows.get(steel.grade?.designation ?? "");
  if (held !== undefined) return held;
  return { celsius: steel.composition.Cr < BEARING_CHROMIUM ? 815 : 845, source: null };
}
