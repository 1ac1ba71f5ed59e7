import { dissolvedAt } from "../hardening/dissolved";
import { usualHardening } from "../hardening/hardening-temperature";
import { STAINLESS_HARDNESS, stainlessLevel } from "../hardening/stainless";
import { STAINLESS_FIT } from "../hardening/stainless-fit";
import { temperatureText } from "../quantity-text";
import type { Steel } from "../steel/steel";
import type { HardnessCurve } from "./curve";
import { hollomonJaffe } from "./hollomon-jaffe";
import type { TemperModel } from "./model";

const KNOTS = STAINLESS_FIT.softening.map(([celsius, lost]) => [hollomonJaffe(celsius, 1), lost] as const);
const FIRST = KNOTS[0] as (typeof KNOTS)[number];
const LAST = KNOTS[KNOTS.length - 1] as (typeof KNOTS)[number];

/** Hardness lost since 150 °C [HRC]: straight between the knots, none below the first. */
function lostAt(parameter: number): number {
  if (parameter <= FIRST[0]) return 0;
  const right = KNOTS.find(([knot]) => knot >= parameter) ?? LAST;
  const left = KNOTS[Math.max(0, KNOTS.indexOf(right) - 1)] ?? FIRST;
  if (right[0] === left[0]) return right[1];
  return left[1] + ((parameter - left[0]) / (right[0] - left[0])) * (right[1] - left[1]);
}

function curveFrom(level: number): HardnessCurve {
  return {
    from: hollomonJaffe(STAINLESS_HARDNESS.inputs.temperC.min, 1),
    to: LAST[0],
    breaks: KNOTS.map(([parameter]) => parameter).slice(0, -1),
    hrcAt: (parameter) => level - lostAt(parameter),
  };
}

/** The tempers behind the fit are of an hour or two; the parameter carries them this far [h]. */
const HOURS = [0.5, 12] as const;

/** Half-width where nitrogen hardens with carbon, or more carbon is in solution than in any row that was read [HRC]. */
const BEYOND_HALF_WIDTH = 4;
/** The most carbon in solution behind the fit [mass %]. */
const MOST_IN_SOLUTION = 0.38;

/** What lies beyond the rows behind the fit, in words; empty where nothing does. */
function beyondRows(steel: Steel, hardenC: number): string {
  if (steel.composition.N > 0) return "nitrogen counted as carbon, no row of a nitrogen grade was read";
  if (dissolvedAt(steel, hardenC).carbon <= MOST_IN_SOLUTION) return "";
  return "more carbon in solution than in any row that was read";
}

/**
 * Hardness after temper of a martensitic stainless steel: what its dissolved carbon, its carbide and its
 * retained austenite give, less the softening that such steels share.
 *
 * @param steel - Grade or analysis with 10.5 to 18.5 % Cr.
 * @param hardenC - Hardening temperature [°C]; left out, the middle of the published window.
 * @throws NotAvailable where the carbon in solution is not known.
 */
export function stainlessModel(steel: Steel, hardenC: number | undefined): TemperModel {
  const at = hardenC ?? usualHardening(steel).celsius;
  const { min, max } = STAINLESS_HARDNESS.inputs.temperC;
  const beyond = beyondRows(steel, at);
  const halfWidth = beyond === "" ? STAINLESS_FIT.halfWidth : BEYOND_HALF_WIDTH;
  return {
    steel,
    curve: curveFrom(stainlessLevel(steel, at)),
    minC: min,
    maxC: max,
    minHours: HOURS[0],
    maxHours: HOURS[1],
    halfWidthAt: () => halfWidth,
    basisAt: () => "by relation for martensitic stainless steel, from dissolved carbon",
    assumptions: [
      beyond,
      hardenC === undefined ? `hardening from ${temperatureText(at)} taken, none was given` : "",
    ].filter((part) => part !== ""),
    relations: [STAINLESS_HARDNESS],
  };
}
