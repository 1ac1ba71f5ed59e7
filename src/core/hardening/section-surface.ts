import { coefficientAt, type HeatTransferCoefficient } from "./heat-transfer";

const TRIES = 30;
const CLOSE_C = 0.02;

/** Two temperatures between which the excess of heat changes sign, narrowed by false position. */
class Bracket {
  private side = 0;

  constructor(
    private low: number,
    private lowExcess: number,
    private high: number,
    private highExcess: number,
  ) {}

  isClosed(): boolean {
    return this.high - this.low <= CLOSE_C;
  }

  next(): number {
    return (this.low * this.highExcess - this.high * this.lowExcess) / (this.highExcess - this.lowExcess);
  }

  /** An end that stays twice has its excess halved, or it would stay for ever. */
  narrow(celsius: number, excess: number): void {
    const side = Math.sign(excess);
    if (side > 0) {
      this.low = celsius;
      this.lowExcess = excess;
      if (this.side > 0) this.highExcess /= 2;
    } else {
      this.high = celsius;
      this.highExcess = excess;
      if (this.side < 0) this.lowExcess /= 2;
    }
    this.side = side;
  }
}

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
  const excess = (celsius: number) =>
    (cellC - celsius) / resistance - factor * coefficientAt(coefficient, celsius) * (celsius - bathC);
  const bracket = new Bracket(bathC, excess(bathC), cellC, excess(cellC));
  let celsius = bracket.next();
  for (let tries = 0; tries < TRIES && !bracket.isClosed(); tries += 1) {
    const value = excess(celsius);
    if (Math.abs(value) * resistance < CLOSE_C) return celsius;
    bracket.narrow(celsius, value);
    celsius = bracket.next();
  }
  return celsius;
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
