import table from "../../data/hardening/dissolved-high-chromium.json";
import { temperatureText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import { checkRange, relation } from "../relation";
import type { Composition } from "../steel/composition";
import { checkElements, elements } from "../steel/element-ranges";
import type { Steel } from "../steel/steel";
import { grouped, number, records, text } from "../table";

/** What austenite holds at the hardening temperature, mass %. */
export interface Dissolved {
  /** In solution [mass %]. */
  readonly carbon: number;
  /** In solution [mass %]. */
  readonly chromium: number;
}

const KIND = "largest difference from the full calculation; equilibrium, so an upper limit for a short soak";

/** Carbon and chromium in solution, high-chromium steels. */
export const DISSOLVED_HIGH_CHROMIUM = relation({
  title: "Carbon and chromium in austenite, 10.5 to 18.5 % Cr",
  source: "carbide-equilibrium",
  locator: "regression for 11 to 18 % Cr",
  evidence: "fitted",
  inputs: {
    hardenC: { label: "hardening temperature", unit: "°C", min: 950, max: 1120 },
    ...elements({ C: [0.08, 1.7], N: [0, 0.5], Cr: [10.5, 18.5], Mo: [0, 1.8], V: [0, 0.2], W: [0, 0.1] }),
  },
  output: { label: "carbon in austenite", unit: "%" },
  error: { size: 0.023, unit: "%", kind: KIND },
  note: "The calculation covers 0.3 to 1.7 % C, 11 to 18 % Cr and up to 0.8 % Mo; less carbon is held whole up to what 0.3 % C gives, nitrogen counts as carbon, and more molybdenum makes an estimate of it.",
});

/** Least carbon of the steels behind the regression [mass %]. */
const MIN_CARBON = 0.3;

/** The same for the grades that were calculated with their own molybdenum and vanadium. */
export const DISSOLVED_GRADE_SERIES = relation({
  ...DISSOLVED_HIGH_CHROMIUM,
  title: "Carbon and chromium in austenite, calculated for the grade",
  locator: table.locator,
  evidence: "compiled",
  inputs: { hardenC: { label: "hardening temperature", unit: "°C", min: 980, max: 1100 } },
  error: {
    size: null,
    unit: "%",
    kind: "no measurement was found to test it; an upper limit for a short soak",
  },
});

/** Same steel under another standard's name; the curve is shared, not the specification. */
const SAME_STEEL: Readonly<Record<string, string>> = { X153CrMoV12: "D2", X105CrMo17: "440C" };

const calculated = records(table, { grade: text, hardenC: number, carbon: number, chromium: number });

/** What one grade holds in solution at one hardening temperature, as calculated. */
export type CalculatedPoint = (typeof calculated)[number];

const series = grouped(calculated, ({ grade }) => grade);

/** The calculated series of a grade, temperatures rising; undefined where none is held. */
export function gradeSeries(steel: Steel): readonly CalculatedPoint[] | undefined {
  const name = steel.grade?.designation ?? "";
  return series.get(SAME_STEEL[name] ?? name);
}

/** Whether a hardening temperature [°C] lies among those calculated. */
export function covers(points: readonly CalculatedPoint[], hardenC: number): boolean {
  return hardenC >= (points[0]?.hardenC ?? 0) && hardenC <= (points[points.length - 1]?.hardenC ?? 0);
}

/**
 * Straight line between the calculated temperatures of a grade.
 *
 * @param points - The series of the grade.
 * @param name - The grade as the sentence calls it.
 * @param hardenC - Hardening temperature [°C].
 * @returns Carbon and chromium in austenite [mass %].
 * @throws NotAvailable outside the temperatures of the series.
 */
export function fromSeries(points: readonly CalculatedPoint[], name: string, hardenC: number): Dissolved {
  const above = points.findIndex((point) => point.hardenC >= hardenC);
  const right = points[above];
  const left = points[Math.max(0, above - 1)];
  if (right === undefined || left === undefined || (above === 0 && right.hardenC !== hardenC)) {
    const [first, last] = [points[0]?.hardenC ?? 0, points[points.length - 1]?.hardenC ?? 0];
    throw new NotAvailable(
      `hardening temperature ${temperatureText(hardenC)} is outside ${temperatureText(first)} to ` +
        `${temperatureText(last)}, the range calculated for ${name}`,
    );
  }
  const share =
    right.hardenC === left.hardenC ? 1 : (hardenC - left.hardenC) / (right.hardenC - left.hardenC);
  return {
    carbon: left.carbon + share * (right.carbon - left.carbon),
    chromium: left.chromium + share * (right.chromium - left.chromium),
  };
}

/** Regression for 11 to 18 % Cr: `u`, `k` and `r` are distances from 1040 °C, 0.9 % C and 14 % Cr. */
export function highChromium(c: Composition, carbon: number, hardenC: number): Dissolved {
  checkRange(DISSOLVED_HIGH_CHROMIUM, "hardenC", hardenC);
  checkElements(DISSOLVED_HIGH_CHROMIUM, { ...c, C: carbon });
  const interstitial = carbon + c.N;
  const u = (hardenC - 1040) / 100;
  const k = Math.max(interstitial, MIN_CARBON) - 0.9;
  const r = c.Cr - 14;
  const inSolution =
    0.4278 +
    0.1809 * u +
    0.2154 * k -
    0.033 * r -
    0.01772 * k * r +
    0.03627 * k * k +
    0.001476 * r * r +
    0.0397 * u * k -
    0.008186 * u * r;
  if (inSolution >= interstitial) return { carbon: interstitial, chromium: c.Cr };
  const chromium =
    10.89 +
    1.437 * u -
    4.66 * k +
    0.699 * r -
    0.1067 * k * r +
    0.7419 * k * k -
    0.003629 * r * r +
    0.1782 * u * k +
    0.04235 * u * r;
  return { carbon: inSolution, chromium: Math.min(c.Cr, chromium) };
}
