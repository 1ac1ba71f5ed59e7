import { temperatureText } from "../quantity-text";
import { InvalidValue, NotAvailable } from "../refusal";
import { checkRange, type Relation, relation } from "../relation";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { carbonOf } from "../steel/carbon";
import type { Composition } from "../steel/composition";
import { checkElements, elements } from "../steel/element-ranges";
import type { Steel } from "../steel/steel";
import { LOWER_CRITICAL, lowerCritical, UPPER_CRITICAL, upperCritical } from "./critical";
import {
  covers,
  DISSOLVED_GRADE_SERIES,
  DISSOLVED_HIGH_CHROMIUM,
  type Dissolved,
  fromSeries,
  gradeSeries,
  highChromium,
} from "./high-chromium";

/** From here up, cementite may stay undissolved at usual hardening temperatures. */
export const CARBIDE_CARBON = 0.7;

/** Carbon and chromium in solution, steels with cementite. */
export const DISSOLVED_CEMENTITE = relation({
  title: "Carbon and chromium in austenite, 0.70 % C and more",
  source: "carbide-equilibrium",
  locator: "regression for cementite steels, 213 calculated steels",
  evidence: "fitted",
  inputs: {
    hardenC: { label: "hardening temperature", unit: "°C", min: 740, max: 900 },
    ...elements({
      C: [CARBIDE_CARBON, 1.5],
      Cr: [0, 1.8],
      Mn: [0, 2],
      Si: [0, 0.6],
      Ni: [0, 2],
      Mo: [0, 0.35],
      V: [0, 0.3],
      W: [0, 0.6],
    }),
  },
  output: { label: "carbon in austenite", unit: "%" },
  error: {
    size: 0.06,
    unit: "%",
    kind: "largest difference from the full calculation of blade grades, 0.10 at 2 % Mn; equilibrium, so an upper limit for a short soak",
  },
  note: "Tungsten is not in the calculation, molybdenum hardly.",
});

/** Below 0.70 % C all carbon dissolves once the ferrite is gone. */
export const DISSOLVED_ALL = relation({
  ...UPPER_CRITICAL,
  title: "All carbon in austenite above Ac3, below 0.70 % C",
  inputs: {
    hardenC: { label: "hardening temperature", unit: "°C", min: null, max: 1000 },
    ...elements({ Mo: [0, 1], V: [0, 0.3], W: [0, 0.6] }),
  },
});

/** Carbon that austenite can hold beside cementite in plain iron-carbon, mass %, 730 to 1145 °C. */
export function saturationCarbon(celsius: number): number {
  return 1.55484e-6 * celsius ** 2 + 1.38294e-4 * celsius - 0.157463;
}

/** Carbon that the elements keep out of austenite beside cementite, mass %. */
function alloyShift(c: Composition): number {
  return 0.116 * c.Cr + 0.007 * c.Mn + 0.08 * c.Si + 0.016 * c.Ni;
}

/** Vanadium carbide outlasts any hardening temperature of these steels and keeps its carbon. */
function freeCarbon(c: Composition, carbon: number): number {
  return c.V >= 0.1 ? carbon - 0.2 * c.V : carbon;
}

/**
 * Temperature above which no cementite is left: the regression for cementite steels solved for it.
 *
 * @param c - Composition in mass %.
 * @param carbon - Carbon of the steel in mass %.
 * @returns °C.
 */
export function acm(c: Composition, carbon: number): number {
  const saturation = freeCarbon(c, carbon) + alloyShift(c) / (1 - 0.075 * c.Cr);
  const [a, b] = [1.55484e-6, 1.38294e-4];
  return (-b + Math.sqrt(b * b + 4 * a * (0.157463 + saturation))) / (2 * a);
}

function cementite(steel: Steel, carbon: number, hardenC: number): Dissolved {
  const c = steel.composition;
  checkRange(DISSOLVED_CEMENTITE, "hardenC", hardenC);
  checkElements(DISSOLVED_CEMENTITE, { ...c, C: carbon });
  const ac1 = lowerCritical(c);
  if (hardenC < ac1) {
    throw new NotAvailable(
      `${steel.name} does not harden from ${temperatureText(hardenC)}: its lower critical temperature is about ` +
        `${temperatureText(ac1)}; give a hardening temperature above it`,
    );
  }
  const free = freeCarbon(c, carbon);
  const saturation = saturationCarbon(hardenC);
  const inSolution = saturation - alloyShift(c) + 0.075 * c.Cr * (free - saturation);
  if (inSolution >= free) return { carbon: free, chromium: c.Cr };
  return { carbon: inSolution, chromium: c.Cr * (1 - (1.14 * (free - inSolution)) / free) };
}

function allDissolved(steel: Steel, carbon: number, hardenC: number): Dissolved {
  const ac3 = upperCritical(steel.composition, carbon);
  if (hardenC < ac3) {
    throw new NotAvailable(
      `${steel.name} at ${temperatureText(hardenC)} still holds ferrite: its upper critical temperature is ` +
        `about ${temperatureText(ac3)}; give a hardening temperature above it`,
    );
  }
  checkRange(DISSOLVED_ALL, "hardenC", hardenC);
  checkElements(DISSOLVED_ALL, steel.composition);
  return { carbon, chromium: steel.composition.Cr };
}

/**
 * Carbon and chromium that the austenite holds when the blade goes into the quench.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param hardenC - Hardening temperature [°C]
 * @returns In austenite [mass %], the upper limit for a short soak.
 * @throws NotAvailable below the critical temperature, outside the calculated range, and for steels
 *   with 1.8 to 11 % Cr or more than a little molybdenum, vanadium or tungsten.
 * Error and source: {@link DISSOLVED_ALL}, {@link DISSOLVED_CEMENTITE}, {@link DISSOLVED_HIGH_CHROMIUM}.
 */
export function dissolvedAt(steel: SteelAsked, hardenC: number): Dissolved {
  steel = steelAsked(steel);
  if (!Number.isFinite(hardenC)) throw new InvalidValue("hardening temperature must be a number in °C");
  const rows = gradeSeries(steel);
  const isStainless = steel.family === "martensitic stainless";
  if (rows !== undefined && (!isStainless || covers(rows, hardenC))) {
    return fromSeries(rows, steel.name, hardenC);
  }
  const carbon = carbonOf(steel);
  const c = steel.composition;
  const { Cr: lean } = DISSOLVED_CEMENTITE.inputs;
  const { Cr: high } = DISSOLVED_HIGH_CHROMIUM.inputs;
  if (c.Cr >= high.min) return highChromium(c, carbon, hardenC);
  if (c.Cr > lean.max) {
    throw new NotAvailable(
      `no relation is published for the carbon in solution of ${steel.name}: it is held for steels with up to ` +
        `${lean.max} % Cr and for ${high.min} to ${high.max} % Cr`,
    );
  }
  return carbon < CARBIDE_CARBON ? allDissolved(steel, carbon, hardenC) : cementite(steel, carbon, hardenC);
}

/** The relations behind `dissolvedAt` for a steel. */
export function dissolvedRelations(steel: Steel): readonly Relation[] {
  if (gradeSeries(steel) !== undefined) return [DISSOLVED_GRADE_SERIES];
  if (steel.composition.Cr >= DISSOLVED_HIGH_CHROMIUM.inputs.Cr.min) return [DISSOLVED_HIGH_CHROMIUM];
  const carbon = steel.composition.C;
  if (Number.isNaN(carbon)) return [DISSOLVED_ALL, DISSOLVED_CEMENTITE];
  return carbon < CARBIDE_CARBON ? [DISSOLVED_ALL, LOWER_CRITICAL] : [DISSOLVED_CEMENTITE];
}
