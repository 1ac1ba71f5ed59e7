import { quantityText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import { isWithin, limitText, relation } from "../relation";
import { sourceText } from "../sources";
import type { Composition } from "../steel/composition";
import { elements } from "../steel/element-ranges";
import type { HardnessCurve } from "./curve";
import { hollomonJaffe } from "./hollomon-jaffe";

/** Silicon up to which the formula was fitted, and up to which it may be used with a wider band. */
const FITTED_SILICON = 1.7;

/** Hardness after temper from composition. */
export const COMPOSITION_FORMULA = relation({
  title: "Hardness after temper from composition",
  source: "blade-metallurgy-tempering",
  locator: "formula in p = T (18 + log t), 449 points of 26 steels",
  evidence: "fitted",
  inputs: {
    temperC: { label: "temper", unit: "°C", min: 100, max: 430 },
    hours: { label: "time in all", unit: "h", min: 1 / 6, max: 24 },
    ...elements({ C: [0.35, 1.15], Mn: [0, 1.8], Si: [0, 2.2], Ni: [0, 3.5] }),
    Cr: { label: "chromium in solution", unit: "%", min: 0, max: 1.5 },
    ...elements({ Mo: [0, 0.35], W: [0, 0.6], V: [0, 0.3], Co: [0, 0.1] }),
  },
  output: { label: "hardness", unit: "HRC" },
  error: { size: 3, unit: "HRC", kind: "half-width that covers 90 % of rows not used in the fit" },
  note: "Fully martensitic before tempering. Silicon above 1.7 % rests on no measured steel: 4 HRC there.",
});

/** Half-width in HRC that covers 90 % for a composition. */
export function formulaHalfWidth(c: Composition): number {
  return c.Si > FITTED_SILICON ? 4 : (COMPOSITION_FORMULA.error.size as number);
}

/** Whether silicon lies beyond the steels of the fit. */
export function siliconBeyondFit(c: Composition): boolean {
  return c.Si > FITTED_SILICON;
}

const CHECKED = ["C", "Mn", "Si", "Ni", "Mo", "W", "V", "Co"] as const;

/**
 * Refuses a steel outside the fit, chromium apart.
 *
 * @param name - The steel as the sentence calls it.
 * @param c - Composition of the steel in mass %.
 * @throws NotAvailable naming element, value and range.
 */
export function checkComposition(name: string, c: Composition): void {
  for (const element of CHECKED) checkElement(name, element, c[element]);
}

/** Refuses more chromium in solution than any steel of the fit had. */
export function checkChromium(name: string, inSolution: number): void {
  checkElement(name, "Cr", inSolution);
}

function checkElement(name: string, element: (typeof CHECKED)[number] | "Cr", percent: number): void {
  const limit = COMPOSITION_FORMULA.inputs[element];
  if (isWithin(limit, percent)) return;
  throw new NotAvailable(
    `no tempering curve of ${name} is held, and the formula from composition does not cover it: ${limit.label} ` +
      `${quantityText(percent, "%")}, accepted ${limitText(limit)} (${sourceText(COMPOSITION_FORMULA.source)})`,
  );
}

/** Elements that the formula reads; the others had no visible effect in the fit. */
export type FormulaComposition = Pick<Composition, "C" | "Mn" | "Si" | "Ni" | "Cr" | "Mo">;

interface Quadratic {
  readonly constant: number;
  readonly slope: number;
}

const BEND = -0.189;
const CENTRE = 10;

function quadratic(c: FormulaComposition): Quadratic {
  const f = 1 - Math.exp(-5 * c.C);
  const silicon = c.Si - 0.18;
  return {
    constant:
      -7.034 +
      64.414 * f +
      2.061 * (c.Mn - 0.65) +
      2.295 * silicon +
      0.267 * c.Ni +
      2.194 * c.Cr +
      2.305 * c.Mo,
    slope: -1.514 - 2.17 * f + 0.664 * silicon + 1.144 * c.Cr + 2.612 * c.Mo,
  };
}

/**
 * Hardness after temper from composition ({@link COMPOSITION_FORMULA}) as a curve, without a range check.
 *
 * @param c - Composition of the austenite [mass %]
 * @returns HRC at a Hollomon-Jaffe parameter
 */
export function formulaCurve(c: FormulaComposition): HardnessCurve {
  const { constant, slope } = quadratic(c);
  const { temperC, hours: time } = COMPOSITION_FORMULA.inputs;
  const from = hollomonJaffe(temperC.min, time.min);
  const to = hollomonJaffe(temperC.max, time.max);
  const top = CENTRE - slope / (2 * BEND);
  return {
    from,
    to,
    breaks: top > from && top < to ? [top] : [],
    hrcAt(parameter) {
      const x = parameter - CENTRE;
      return constant + x * (slope + x * BEND);
    },
  };
}
