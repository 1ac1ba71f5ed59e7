import { relation } from "../relation";
import type { Composition } from "../steel/composition";
import type { Dissolved } from "./high-chromium";

/** Half-widths of Ms that cover 90 % of measured steels [°C]. */
export const START_HALF_WIDTHS = {
  /** To 0.80 % C. */
  lean: 38,
  /** Above 0.80 % C, where what is dissolved has to be taken. */
  carbide: 70,
  /** Above 9 % Cr. */
  chromium: 90,
} as const;

/** Carbon up to which all of it may be in solution [mass %]. */
const LEAN_CARBON = 0.8;

/** Start of martensite on cooling. */
export const MARTENSITE_START = relation({
  title: "Martensite start temperature Ms",
  source: "van-bohemen-2012",
  locator: "equation for Ms",
  evidence: "fitted",
  inputs: { carbon: { label: "carbon in austenite", unit: "%", min: 0.1, max: 1.9 } },
  output: { label: "Ms", unit: "°C" },
  error: {
    size: START_HALF_WIDTHS.carbide,
    unit: "°C",
    kind:
      "half-width that covers 90 % of 42 steels above 0.80 % C, whose hardening temperature had to be taken; up to there " +
      `${START_HALF_WIDTHS.lean} covers 90 % of 84 heats, 41 of them of a database that is cited and not held`,
  },
});

/** Hardness that retained austenite costs [HRC for each %]. */
export const HRC_PER_PERCENT_AUSTENITE = 0.15;

/** Austenite left after the quench. */
export const RETAINED_AUSTENITE = relation({
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
  note: "What is in solution is that of equilibrium, so after a short soak the figure is an upper limit: O1 from 800 °C (1472 °F) 13.6 % against about 9 % recalled.",
});

/**
 * Temperature at which austenite starts to turn to martensite.
 *
 * @param c - Composition of the austenite, carbon and chromium as dissolved [mass %]
 * @returns Ms [°C]
 * Limits: none are checked here; lean alloys, as the relation's element ranges say.
 * Error and source: {@link MARTENSITE_START}.
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

/** Above this much chromium the equations for lean steel give way. */
const HIGH_CHROMIUM = 9;

/** Start of martensite, high-chromium steels. */
export const HIGH_CHROMIUM_START = relation({
  title: "Martensite start temperature Ms, above 9 % Cr",
  source: "capdevila-2002",
  locator: "equation for Ms on what is dissolved",
  evidence: "fitted",
  inputs: { chromium: { label: "chromium", unit: "%", min: 9, max: 18.5 } },
  output: { label: "Ms", unit: "°C" },
  error: {
    size: START_HALF_WIDTHS.chromium,
    unit: "°C",
    kind: "half-width that covers 90 % of 12 steels; for one analysis two handbooks differ by 125",
  },
});

/** Austenite left after the quench, high-chromium steels. */
export const HIGH_CHROMIUM_AUSTENITE = relation({
  ...RETAINED_AUSTENITE,
  title: "Retained austenite after the quench, above 5 % Cr: order of magnitude only",
  source: "koistinen-marburger-1959",
  locator: "exp(-0.011 (Ms - T)), Ms by Capdevila",
  inputs: HIGH_CHROMIUM_START.inputs,
  error: { size: null, unit: "%", kind: "order of magnitude: no measured set was found to test it" },
});

/** The austenite of a steel: what is dissolved in place of what the analysis holds; nitrogen is part of the carbon. */
export function austeniteOf(c: Composition, { carbon, chromium }: Dissolved): Composition {
  return { ...c, C: carbon, Cr: chromium, N: 0 };
}

/** Ms of high-chromium austenite by Capdevila, Caballero and García de Andrés [°C]. */
export function highChromiumStart(c: Composition): number {
  const kelvin =
    764.2 -
    302.6 * c.C -
    30.6 * c.Mn -
    16.6 * c.Ni -
    8.9 * c.Cr +
    2.4 * c.Mo -
    11.3 * c.Cu +
    8.58 * c.Co +
    7.4 * c.W -
    14.5 * c.Si;
  return kelvin - 273.15;
}

/** Ms by the equation that belongs to the steel: its chromium as analysed decides, what is dissolved counts. */
export function startOf(c: Composition, dissolved: Dissolved): number {
  const austenite = austeniteOf(c, dissolved);
  return c.Cr > HIGH_CHROMIUM ? highChromiumStart(austenite) : martensiteStart(austenite);
}

/** Half-width of Ms for a steel [°C]. */
export function startHalfWidth({ C, Cr }: Composition): number {
  if (Cr > HIGH_CHROMIUM) return START_HALF_WIDTHS.chromium;
  return C > LEAN_CARBON ? START_HALF_WIDTHS.carbide : START_HALF_WIDTHS.lean;
}
