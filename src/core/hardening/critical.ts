import { checkRange, relation } from "../relation";
import type { Composition } from "../steel/composition";
import { elements } from "../steel/element-ranges";

/** Lower critical temperature. */
export const LOWER_CRITICAL = relation({
  title: "Lower critical temperature Ac1",
  source: "andrews-1965",
  locator: "equation for Ae1",
  evidence: "fitted",
  inputs: elements({
    Cr: [0, 1.8],
    Mn: [0, 2],
    Si: [0, 2.2],
    Ni: [0, 5],
    Mo: [0, 1],
    V: [0, 0.3],
    W: [0, 0.6],
  }),
  output: { label: "Ac1", unit: "°C" },
  error: {
    size: 24,
    unit: "°C",
    kind: "half-width that covers 90 % of 22 published steels, 16 of them from memory; three other equations do no better",
  },
  note: "The source prints no limits; these are those of low-alloy steel as the other relations here take them.",
});

/** Upper critical temperature of steels that form ferrite first. */
export const UPPER_CRITICAL = relation({
  title: "Upper critical temperature Ac3",
  source: "carbide-equilibrium",
  locator: "iron-carbon line, with the alloy terms of the short Andrews form",
  evidence: "fitted",
  inputs: { carbon: { label: "carbon", unit: "%", min: 0.05, max: 0.75 } },
  output: { label: "Ac3", unit: "°C" },
  error: {
    size: 30,
    unit: "°C",
    kind: "half-width that covers all of 8 published steels, 6 of them from memory (28 covers 7); faster heating raises it",
  },
});

/**
 * Temperature at which austenite starts to form on heating.
 *
 * @param c - Composition in mass %.
 * @returns Ac1 in °C, by Andrews.
 */
export function lowerCritical(c: Composition): number {
  return 723 - 10.7 * c.Mn - 16.9 * c.Ni + 29.1 * c.Si + 16.9 * c.Cr + 6.38 * c.W;
}

/**
 * Temperature above which no ferrite is left.
 *
 * @param c - Composition in mass %.
 * @param carbon - Carbon in mass %, 0.05 to 0.75.
 * @returns Ac3 in °C, never below Ac1.
 * @throws NotAvailable outside the carbon range.
 */
export function upperCritical(c: Composition, carbon: number): number {
  checkRange(UPPER_CRITICAL, "carbon", carbon);
  const ironCarbon = 908.4 - 428.1 * carbon + 377.7 * carbon ** 2 - 170.7 * carbon ** 3;
  const alloy = 44.7 * c.Si - 15.2 * c.Ni + 104 * c.V + 31.5 * c.Mo + 13.1 * c.W;
  return Math.max(lowerCritical(c), ironCarbon + alloy);
}
