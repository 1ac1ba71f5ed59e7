import { type Film, filmCoefficient } from "./film";

const TRIES = 30;
const CLOSE_C = 0.02;

/**
 * Temperature of the outermost surface, where the heat that arrives through steel and clay leaves
 * through the film. A film may boil in more than one way for the same heat; the bracket always
 * starts from the bath and the steel, so that the answer does not depend on what came before.
 *
 * @param cellC - Temperature inside, °C.
 * @param resistance - From there to the surface, m²K/W.
 * @param film - The quench.
 * @param factor - Bath factor on the film coefficient.
 * @returns °C.
 */
function surfaceTemperature(cellC: number, resistance: number, film: Film, factor: number): number {
  const { bathC } = film;
  let low = bathC;
  let lowExcess = (cellC - bathC) / resistance;
  let high = cellC;
  let highExcess = -factor * filmCoefficient(film, cellC) * (cellC - bathC);
  let side = 0;
  let celsius = (low * highExcess - high * lowExcess) / (highExcess - lowExcess);
  for (let tries = 0; tries < TRIES && high - low > CLOSE_C; tries += 1) {
    const excess =
      (cellC - celsius) / resistance - factor * filmCoefficient(film, celsius) * (celsius - bathC);
    if (Math.abs(excess) * resistance < CLOSE_C) return celsius;
    // False position; an end that stays twice has its excess halved, or it would stay for ever.
    if (excess > 0) {
      low = celsius;
      lowExcess = excess;
      if (side > 0) highExcess /= 2;
      side = 1;
    } else {
      high = celsius;
      highExcess = excess;
      if (side < 0) lowExcess /= 2;
      side = -1;
    }
    celsius = (low * highExcess - high * lowExcess) / (highExcess - lowExcess);
  }
  return celsius;
}

/**
 * Heat transmission from inside the steel to the bath through steel, clay and film.
 *
 * @returns W/m²K.
 */
export function transmission(cellC: number, resistance: number, film: Film, factor: number): number {
  if (Math.abs(cellC - film.bathC) < CLOSE_C)
    return 1 / (resistance + 1 / (factor * filmCoefficient(film, cellC)));
  const outside = surfaceTemperature(cellC, resistance, film, factor);
  return 1 / (resistance + 1 / (factor * filmCoefficient(film, outside)));
}
