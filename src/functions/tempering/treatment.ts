import { isHardnessSpan, readHardness } from "../../core/hardness/read-hardness";
import { USUAL_CYCLES, USUAL_HOURS } from "../../core/tempering/hollomon-jaffe";
import { number, numberOrNothing, optionalNumber, type Parameter } from "../parameters";

/** Bounds of sense for a temper; what is published is narrower and belongs to each steel. */
export const TEMPER_SPAN = { quantity: "temperature", unit: "°C", above: 0, max: 800 } as const;
export const HRC_SPAN = { quantity: "hardness", unit: "HRC", min: 20, max: 70 } as const;

export const TIME_SPAN = { quantity: "time", unit: "h", above: 0, max: 1000 } as const;

/** The temper asked about. */
export const temperC = number({
  label: "temper C",
  ...TEMPER_SPAN,
  help: 'Temper of the steel itself in °C, not of the oven air; "400 °F" is converted.',
});

const oneFigure = number({
  label: "target HRC",
  ...HRC_SPAN,
  help: 'Wanted hardness in HRC; of a span such as "60-62" the middle.',
});

/** The hardness asked for. */
export const targetHrc: Parameter<number> = {
  ...oneFigure,
  read: (cell) =>
    oneFigure.read(typeof cell === "string" && isHardnessSpan(cell) ? readHardness(cell).aim : cell),
};

/** Time in all of one temper. */
export const onceHours = optionalNumber({
  label: "hours",
  ...TIME_SPAN,
  fallback: USUAL_HOURS,
  help: "Time at temperature in all, in hours.",
});

/** The hardening temperature. */
export const hardenC = numberOrNothing({
  label: "harden C",
  quantity: "temperature",
  unit: "°C",
  min: 600,
  max: 1300,
  help: "Hardening temperature in °C; where left out, the usual one of the steel.",
});

/** The arguments that follow in every tempering function. */
export const treatment = {
  hours: optionalNumber({
    label: "hours",
    ...TIME_SPAN,
    fallback: USUAL_HOURS,
    help: "Time at temperature of one cycle in hours.",
  }),
  cycles: optionalNumber({
    label: "cycles",
    quantity: "count",
    unit: "",
    min: 1,
    max: 10,
    whole: true,
    fallback: USUAL_CYCLES,
    help: "Number of equal tempers; they count as one of the whole time.",
  }),
  knownC: numberOrNothing({
    label: "known C",
    ...TEMPER_SPAN,
    help: "A temper of the same time that a blade or coupon of this batch already had, in °C.",
  }),
  knownHrc: numberOrNothing({
    label: "known HRC",
    ...HRC_SPAN,
    help: "What that blade or coupon read in HRC.",
  }),
  hardenC,
};

/** One decimal: more would claim what no source supports, less could not be turned back into a temper. */
export function toTenth(value: number): number {
  return Math.round(value * 10) / 10;
}
