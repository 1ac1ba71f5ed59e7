import type { Relation } from "../relation";
import type { Composition } from "../steel/composition";

/** Start of martensite on cooling. */
export const MARTENSITE_START: Relation = {
  title: "Martensite start temperature Ms",
  source: "van-bohemen-2012",
  locator: "equation for Ms",
  evidence: "fitted",
  inputs: { carbon: { label: "carbon in austenite", unit: "%", min: 0.1, max: 1.9 } },
  output: { label: "Ms", unit: "°C" },
  error: { size: 25, unit: "°C", kind: "nine handbook values are missed by 13 °C root mean square" },
};

/** Austenite left after the quench. */
export const RETAINED_AUSTENITE: Relation = {
  title: "Retained austenite after the quench",
  source: "van-bohemen-2012",
  locator: "Koistinen-Marburger form with a rate that depends on composition",
  evidence: "fitted",
  inputs: MARTENSITE_START.inputs,
  output: { label: "retained austenite", unit: "%" },
  error: {
    size: 5,
    unit: "%",
    kind: "about: 11 % against 13 % published at 0.95 % C, 38 % against 30 to 47 % at 1.4 % C",
  },
};

/**
 * Temperature at which austenite starts to turn to martensite.
 *
 * @param c - Composition of the austenite in mass %, carbon and chromium as dissolved.
 * @returns Ms in °C, for lean alloys.
 */
export function martensiteStart(c: Composition): number {
  const carbon = 600 * (1 - Math.exp(-0.96 * c.C));
  return 565 - 31 * c.Mn - 13 * c.Si - 10 * c.Cr - 18 * c.Ni - 12 * c.Mo - carbon;
}

/**
 * Austenite left untransformed after cooling.
 *
 * @param c - Composition of the austenite in mass %, carbon and chromium as dissolved.
 * @param quenchToC - Temperature reached by the quench in °C.
 * @returns Retained austenite in %, 0 to 100.
 */
export function retainedAustenite(c: Composition, quenchToC = 20): number {
  const alloy = 0.14 * c.Mn + 0.21 * c.Si + 0.11 * c.Cr + 0.08 * c.Ni + 0.05 * c.Mo;
  const rate = 1e-3 * (27.2 - alloy - 19.8 * (1 - Math.exp(-1.56 * c.C)));
  const below = Math.max(0, martensiteStart(c) - quenchToC);
  return 100 * Math.exp(-rate * below);
}
