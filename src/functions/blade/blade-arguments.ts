import type { Caution } from "../../core/blade/caution";
import { quenchOptions } from "../hardening/quench-options";
import { numberOrNothing, textOrNothing } from "../parameters";
import { INCHES_UNDER } from "../shape/lengths";

/** The temper that a hardness stands for, where none is told. */
export const USUAL_TREATMENT = { hours: 2, cycles: 1 };

/** The length of the blade. */
export const bladeLength = numberOrNothing({
  label: "length",
  quantity: "length",
  unit: "mm",
  above: 0,
  inchesUnder: INCHES_UNDER.length,
  help: "Length of the blade in mm; over 400 mm a struck blade counts as long.",
});

/** The thickest place that has to harden. */
export const thickness = numberOrNothing({
  label: "thickness",
  quantity: "length",
  unit: "mm",
  above: 0,
  max: 1000,
  inchesUnder: INCHES_UNDER.thickness,
  help: "Thickest place at the quench in mm; with the quench it says whether the blade hardens through.",
});

/** The quench. */
export const quench = textOrNothing({
  ...quenchOptions,
  help: "Quench, one of the words that QUENCHES() lists.",
});

/** A chance with two decimals: more would claim what no estimate supports. */
export function shownChance(chance: number | undefined): number | string {
  return chance === undefined ? "" : Math.round(chance * 100) / 100;
}

/** Every caution in full, the most pressing first. */
export function cautionText(cautions: readonly Caution[]): string {
  return cautions.map(({ full }) => full).join(" ");
}
