import table from "../../data/hardening/dissolved-high-chromium.json";
import { temperatureText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import { checkRange, type Relation } from "../relation";
import type { Composition } from "../steel/composition";
import type { Steel } from "../steel/steel";

/** What austenite holds at the hardening temperature, mass %. */
export interface Dissolved {
  readonly carbon: number;
  readonly chromium: number;
}

const KIND = "largest difference from the full calculation; equilibrium, so an upper limit for a short soak";

/** Carbon and chromium in solution, high-chromium steels. */
export const DISSOLVED_HIGH_CHROMIUM: Relation = {
  title: "Carbon and chromium in austenite, 11 to 18 % Cr",
  source: "carbide-equilibrium",
  locator: "regression for 11 to 18 % Cr",
  evidence: "fitted",
  inputs: {
    hardenC: { label: "hardening temperature", unit: "°C", min: 950, max: 1120 },
    carbon: { label: "carbon", unit: "%", min: 0.3, max: 1.7 },
    chromium: { label: "chromium", unit: "%", min: 11, max: 18 },
    molybdenum: { label: "molybdenum", unit: "%", min: 0, max: 0.8 },
    vanadium: { label: "vanadium", unit: "%", min: 0, max: 0.2 },
    tungsten: { label: "tungsten", unit: "%", min: 0, max: 0.1 },
  },
  output: { label: "carbon in austenite", unit: "%" },
  error: { size: 0.023, unit: "%", kind: KIND },
};

/** The same for the grades that were calculated with their own molybdenum and vanadium. */
export const DISSOLVED_GRADE_SERIES: Relation = {
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
};

/** Same steel under another standard's name; the curve is shared, not the specification. */
const SAME_STEEL: Readonly<Record<string, string>> = { X153CrMoV12: "D2", X105CrMo17: "440C" };

type Row = readonly [hardenC: number, carbon: number, chromium: number];

const series = new Map<string, Row[]>();
for (const [grade, hardenC, carbon, chromium] of table.rows as [string, number, number, number][]) {
  const rows = series.get(grade) ?? [];
  rows.push([hardenC, carbon, chromium]);
  series.set(grade, rows);
}

/** The calculated series of a grade, or undefined. */
export function gradeSeries(steel: Steel): readonly Row[] | undefined {
  const name = steel.grade?.designation ?? "";
  return series.get(SAME_STEEL[name] ?? name);
}

/** Straight line between the calculated temperatures of a grade; refuses outside them. */
export function fromSeries(rows: readonly Row[], name: string, hardenC: number): Dissolved {
  const above = rows.findIndex(([t]) => t >= hardenC);
  const right = rows[above];
  const left = rows[Math.max(0, above - 1)];
  if (right === undefined || left === undefined || (above === 0 && right[0] !== hardenC)) {
    const [first, last] = [rows[0]?.[0] ?? 0, rows[rows.length - 1]?.[0] ?? 0];
    throw new NotAvailable(
      `hardening temperature ${temperatureText(hardenC)} is outside ${temperatureText(first)} to ` +
        `${temperatureText(last)}, the range calculated for ${name}`,
    );
  }
  const share = right[0] === left[0] ? 1 : (hardenC - left[0]) / (right[0] - left[0]);
  return {
    carbon: left[1] + share * (right[1] - left[1]),
    chromium: left[2] + share * (right[2] - left[2]),
  };
}

/** Regression for 11 to 18 % Cr: `u`, `k` and `r` are distances from 1040 °C, 0.9 % C and 14 % Cr. */
export function highChromium(c: Composition, carbon: number, hardenC: number): Dissolved {
  checkRange(DISSOLVED_HIGH_CHROMIUM, "hardenC", hardenC);
  checkRange(DISSOLVED_HIGH_CHROMIUM, "carbon", carbon);
  checkRange(DISSOLVED_HIGH_CHROMIUM, "chromium", c.Cr);
  checkRange(DISSOLVED_HIGH_CHROMIUM, "molybdenum", c.Mo);
  checkRange(DISSOLVED_HIGH_CHROMIUM, "vanadium", c.V);
  checkRange(DISSOLVED_HIGH_CHROMIUM, "tungsten", c.W);
  const u = (hardenC - 1040) / 100;
  const k = carbon - 0.9;
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
  if (inSolution >= carbon) return { carbon, chromium: c.Cr };
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
