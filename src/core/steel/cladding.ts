import { numberText, quantityText, temperatureText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { checkRange, relation } from "../relation";
import { austeniteDiffusivity } from "./billet";
import type { Steel } from "./steel";

/** Carbon that crosses the weld between a core and its cladding. */
export const CLADDING_DIFFUSION = relation({
  title: "Carbon across a weld of two steels",
  source: "diffusion-into-half-space",
  locator:
    "error function of two half spaces; a tenth of the step is left at 1.81 √(D t); D by Lee, Matlock and Van Tyne",
  evidence: "fitted",
  inputs: {
    celsius: { label: "temperature", unit: "°C", min: 850, max: 1250 },
    minutes: { label: "time", unit: "min", min: 0.1, max: 600 },
    layer: { label: "layer", unit: "mm", min: 0.05, max: 50 },
  },
  output: { label: "depth", unit: "mm" },
  error: {
    size: 50,
    unit: "%",
    kind: "half-width, estimate: what draws carbon is its activity, not its per cent",
  },
  note: "Chromium of a stainless cladding draws carbon across beyond an even content, and slows it there; nickel foil keeps some of it back.",
});

/** Warp of a blade of two layers. */
export const TWO_LAYER_WARP = relation({
  title: "Curvature of a strip of two layers",
  source: "timoshenko-1925",
  locator: "6 ε (1 + m)² / (h [3 (1 + m)² + (1 + m n)(m² + 1/(m n))]), m ratio of thickness, n of the moduli",
  evidence: "standard",
  inputs: {},
  output: { label: "curvature", unit: "1/m" },
  error: {
    size: null,
    unit: "1/m",
    kind: "elastic strip, no straightening; a bound for how a blade clad on one side bends",
  },
});

/** x / √(D t) where a tenth of the step is left: erfc(x / 2√(D t)) = 0.2 of the half step. */
const TENTH_LEFT = 1.812388;

/** A blade of a core between two layers of cladding, or with one of them. */
export interface Cladding {
  /** Carbon of the core before it is welded, 0 and more [mass %]. */
  readonly core: number;
  /** Carbon of the cladding before it is welded, 0 and more [mass %]. */
  readonly clad: number;
  /** At which it is held, 850 to 1250 [°C]. */
  readonly celsius: number;
  /** At that temperature, up to 600 [min]. */
  readonly minutes: number;
  /** Thickness of one layer of the cladding, and of the half of the core behind it, up to 50 [mm]. */
  readonly layer: number;
}

export interface CladEdge {
  /** Depth in which core or cladding differs by a tenth of the step and more [mm]. */
  readonly depth: number;
  /** Carbon at the weld [mass %]. */
  readonly weld: number;
  /** Whether the whole of the layer has changed, so that the figure is only a lower bound. */
  readonly isThrough: boolean;
}

/** Error function; Abramowitz and Stegun 7.1.26, error under 1.5e-7. */
export function errorFunction(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const tail =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const value = 1 - tail * Math.exp(-x * x);
  return x < 0 ? -value : value;
}

/** Length √(D t) of diffusion at the mean carbon of the two [mm]. */
export function diffusionLength({ core, clad, celsius, minutes }: Omit<Cladding, "layer">): number {
  const mean = Math.min(1.2, Math.max(0.1, (core + clad) / 2));
  return 1000 * Math.sqrt(austeniteDiffusivity(celsius, mean) * minutes * 60);
}

/**
 * Carbon at a distance from the weld, both sides taken as endless.
 *
 * @param x - Distance into the core, negative into the cladding [mm].
 * @returns Mass %.
 */
export function carbonAcross({ core, clad, ...heat }: Omit<Cladding, "layer">, x: number): number {
  const length = diffusionLength({ core, clad, ...heat });
  return (core + clad) / 2 + ((core - clad) / 2) * errorFunction(x / (2 * length));
}

function checkCladding({ celsius, minutes, layer }: Cladding): void {
  checkRange(CLADDING_DIFFUSION, "celsius", celsius);
  checkRange(CLADDING_DIFFUSION, "minutes", minutes);
  checkRange(CLADDING_DIFFUSION, "layer", layer);
}

/**
 * How far carbon has crossed the weld of a clad blade.
 *
 * @param cladding - Carbon of both steels [mass %], temperature [°C], time [min], layer [mm].
 * @returns Depth to where a tenth of the step is left, the same into both, and the carbon at the weld.
 * @throws NotAvailable outside 850 to 1250 °C, 600 min and 50 mm.
 * Error and source: {@link CLADDING_DIFFUSION}; chromium draws more than the per cents say.
 */
export function cladEdge(cladding: Cladding): CladEdge {
  checkCladding(cladding);
  const depth = TENTH_LEFT * diffusionLength(cladding);
  const weld = (cladding.core + cladding.clad) / 2;
  return { depth: Math.min(depth, cladding.layer), weld, isThrough: depth > cladding.layer };
}

/**
 * Curvature of a strip of two layers whose free lengths differ.
 *
 * @param strain - Difference of the free lengths, as a share.
 * @param first - Thickness of the layer that is the longer [mm].
 * @param second - Thickness of the other [mm].
 * @param modulusRatio - Elastic modulus of the first over that of the second.
 * @returns 1/mm.
 * @throws InvalidValue for a layer without thickness.
 * Source: Timoshenko 1925.
 */
export function twoLayerCurvature(strain: number, first: number, second: number, modulusRatio = 1): number {
  if (!(first > 0 && second > 0)) {
    throw new InvalidValue(
      `layers of ${numberText(first)} and ${quantityText(second, "mm")}: give thicknesses above 0`,
    );
  }
  const m = first / second;
  const n = modulusRatio;
  return (
    (6 * strain * (1 + m) ** 2) /
    ((first + second) * (3 * (1 + m) ** 2 + (1 + m * n) * (m * m + 1 / (m * n))))
  );
}

/** Rise of an arc over its chord for a curvature [1/mm] and a length [mm]. */
export function bowOf(curvature: number, length: number): number {
  return (curvature * length ** 2) / 8;
}

/** Carbon that an edge wants [mass %]: common practice, no source. */
const EDGE_CARBON = 0.6;

/** How far a hard core is the longer after the quench, as a share: a third of the volume change of martensite. */
function hardeningStrain(core: number): number {
  return Math.max(0, (1.68 * core) / 300);
}

/** What is assumed of a blade where its warp is told [mm]. */
const TOLD_LENGTH = 200;

/** What to be wary of with a clad blade, in sentences. */
export function claddingNote(core: Steel, clad: Steel, given: Cladding): string {
  const { depth, isThrough } = cladEdge(given);
  const heat = `${numberText(given.minutes)} min at ${temperatureText(given.celsius)}`;
  const bow = bowOf(twoLayerCurvature(hardeningStrain(given.core), given.layer, given.layer), TOLD_LENGTH);
  const edge =
    given.core >= EDGE_CARBON
      ? isThrough
        ? `after ${heat} carbon has crossed the whole layer: the edge may fall under ${EDGE_CARBON} % C`
        : `the middle of the core keeps its ${quantityText(given.core, "% C")}; keep the edge ${quantityText(Number((2 * depth).toFixed(2)), "mm")} of core or more`
      : `${core.name} holds under ${EDGE_CARBON} % C: no edge lasts on it`;
  const draws = clad.composition.Cr >= 10.5 ? "; chromium draws more across than this" : "";
  return `${edge}${draws}; clad on one side only, ${TOLD_LENGTH} mm may bow ${numberText(Math.round(bow))} mm in hardening`;
}
