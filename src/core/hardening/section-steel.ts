/** Heat properties of the steel in a section; temperatures in °C. */
export interface SectionSteel {
  /** kg/m³. */
  readonly density: number;
  /** W/mK. */
  readonly conductivity: (celsius: number) => number;
  /** J/kgK. */
  readonly heatCapacity: (celsius: number) => number;
}

/** Austenite on its way down, the state of the steel until it transforms: fit to the bars of the fast-oil trials. */
export const AUSTENITE: SectionSteel = {
  density: 7800,
  conductivity: (t) => 14.71 + t * (0.0159 - 2e-6 * t),
  heatCapacity: (t) => 436.6 + t * (0.642 + t * (-1e-3 + 6e-7 * t)),
};

/** Mean heat capacity between two temperatures: the rule of Simpson is exact for a cubic, so no heat is lost. */
export function meanHeatCapacity({ heatCapacity }: SectionSteel, from: number, to: number): number {
  return (heatCapacity(from) + 4 * heatCapacity((from + to) / 2) + heatCapacity(to)) / 6;
}
