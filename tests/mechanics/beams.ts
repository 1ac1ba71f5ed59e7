import { type Blade, bladeOf } from "../../src/core/mechanics/beam";
import { findGrind } from "../../src/core/shape/grinds";
import { ELASTIC_MODULUS } from "../../src/core/steel/elastic-modulus";

export const LENGTH = 800;
export const WIDTH = 30;
export const THICKNESS = 8;
export const DENSITY = 7.85;

/** A rectangular bar whose thickness and width run in a straight line to the tip, in `panels` equal panels. */
export function bar(thickness = 1, width = 1, panels = 1): Blade {
  const grind = findGrind("rectangle");
  const stations = Array.from({ length: panels + 1 }, (_, index) => {
    const share = index / panels;
    return {
      x: share * LENGTH,
      grind,
      width: WIDTH * (1 + (width - 1) * share),
      thickness: THICKNESS * (1 + (thickness - 1) * share),
    };
  });
  return bladeOf(stations, DENSITY);
}

/** Bending stiffness at the heel [N mm²] and mass per length there [t/mm]. */
export const RIGIDITY = (ELASTIC_MODULUS * WIDTH * THICKNESS ** 3) / 12;
export const PER_LENGTH = DENSITY * 1e-9 * WIDTH * THICKNESS;

/** ω √(ρA L⁴ / EI) of the heel for a frequency [Hz] */
export function scaledFrequency(hertz: number): number {
  return 2 * Math.PI * hertz * Math.sqrt((PER_LENGTH * LENGTH ** 4) / RIGIDITY);
}

/** Root of a function by bisection, for the checks only. */
export function bisected(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let step = 0; step < 200; step += 1) {
    const middle = (a + b) / 2;
    if (f(a) * f(middle) <= 0) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}
