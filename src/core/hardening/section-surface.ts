import { coefficientAt, type HeatTransferCoefficient } from "./heat-transfer";

const TRIES = 30;
const CLOSE_C = 0.02;

/**
 * Temperature of the outermost surface, where the heat that arrives through steel and clay leaves
 * through its boundary with the bath. A bath may boil in more than one way for the same heat; the bracket always
 * starts from the bath and the steel, so that the answer does not depend on what came before.
 *
 * @param cellC - Temperature inside, °C.
 * @param resistance - From there to the surface, m²K/W.
 * @param coefficient - Of the quench.
 * @param factor - Bath factor on the heat transfer coefficient.
 * @returns °C.
 */
function surfaceTemperature(
  cellC: number,
  resistance: number,
  coefficient: HeatTransferCoefficient,
  factor: number,
): number {
  const { bathC } = coefficient;
  const conducted = 1 / resistance;
  // Two temperatures between which the excess of heat changes sign, narrowed by false position. It is sought tens of
  // thousands of times in a section, so all of it stands in this one function.
  let low = bathC;
  let lowExcess = (cellC - bathC) * conducted;
  let high = cellC;
  let highExcess = -leaving(cellC, coefficient, factor);
  let before = 0;
  let celsius = between(low, lowExcess, high, highExcess);
  for (let tries = 0; tries < TRIES && high - low > CLOSE_C; tries += 1) {
    const excess = (cellC - celsius) * conducted - leaving(celsius, coefficient, factor);
    if (Math.abs(excess) * resistance < CLOSE_C) return celsius;
    const side = excess > 0 ? 1 : -1;
    const kept = keptShare(side, before);
    if (side > 0) {
      low = celsius;
      lowExcess = excess;
      highExcess *= kept;
    } else {
      high = celsius;
      highExcess = excess;
      lowExcess *= kept;
    }
    before = side;
    celsius = between(low, lowExcess, high, highExcess);
  }
  return celsius;
}

/** Heat that leaves the surface, W/m². */
const leaving = (celsius: number, coefficient: HeatTransferCoefficient, factor: number): number =>
  factor * coefficientAt(coefficient, celsius) * (celsius - coefficient.bathC);

/** An end that stays twice has its excess halved, or it would stay for ever. */
const keptShare = (side: number, before: number): number => (side === before ? 0.5 : 1);

/** Where a straight line between two points crosses zero. */
function between(low: number, lowExcess: number, high: number, highExcess: number): number {
  return (low * highExcess - high * lowExcess) / (highExcess - lowExcess);
}

/**
 * Heat transmission from inside the steel to the bath through steel, clay and surface.
 *
 * @returns W/m²K.
 */
export function transmission(
  cellC: number,
  resistance: number,
  coefficient: HeatTransferCoefficient,
  factor: number,
): number {
  if (Math.abs(cellC - coefficient.bathC) < CLOSE_C)
    return 1 / (resistance + 1 / (factor * coefficientAt(coefficient, cellC)));
  const outside = surfaceTemperature(cellC, resistance, coefficient, factor);
  return 1 / (resistance + 1 / (factor * coefficientAt(coefficient, outside)));
}
