import { numberText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { checkRange, relation } from "../relation";

/** The mean carbon of a billet welded of several steels. */
export const BILLET_MEAN = relation({
  title: "carbon of a welded billet as the mean by mass",
  source: "common",
  locator: "mass balance; carbon evens out between the layers",
  evidence: "common practice",
  inputs: {},
  output: { label: "carbon", unit: "mass %" },
  error: { size: null, unit: "mass %", kind: "no loss to scale and decarburised skin counted" },
});

/** Diffusion of carbon in austenite. */
export const CARBON_DIFFUSION = relation({
  title: "carbon diffusivity in austenite",
  source: "lee-matlock-van-tyne-2011",
  locator: "D = 1e-4 (0.146 - 0.036 C) exp(-(144300 - 15000 C)/RT) m²/s, without its alloy terms",
  evidence: "fitted",
  inputs: {
    celsius: { label: "temperature", unit: "°C", min: 850, max: 1250 },
    carbon: { label: "carbon", unit: "%", min: 0.1, max: 1.2 },
  },
  output: { label: "diffusivity", unit: "m²/s" },
  error: {
    size: 18,
    unit: "%",
    kind: "against Ågren's equation (1986, from memory), 0.2 to 0.8 % C, 850 to 1200 °C (1562 to 2192 °F)",
  },
  note: "Cr and Mo slow carbon, Si speeds it; compared at 850 to 1200 °C (1562 to 2192 °F); the limits of use go a little further.",
});

/** Evening out of equal alternate layers. */
export const LAYERS_EVEN = relation({
  ...CARBON_DIFFUSION,
  title: "time for equal alternate layers to come within 5 % of one carbon content",
  locator: `0.328 h²/D, first term of the series for equal alternate layers; ${CARBON_DIFFUSION.locator}`,
  output: { label: "time", unit: "min" },
});

const GAS_CONSTANT = 8.314;

/**
 * Diffusivity of carbon in austenite.
 *
 * @param celsius - Temperature of the steel itself, 850 to 1250 [°C]
 * @param carbon - Carbon of the austenite, 0.1 to 1.2 [mass %]
 * @returns [m²/s]
 * @throws NotAvailable outside those ranges.
 * Error and source: {@link CARBON_DIFFUSION}.
 */
export function carbonDiffusivity(celsius: number, carbon: number): number {
  checkRange(CARBON_DIFFUSION, "celsius", celsius);
  checkRange(CARBON_DIFFUSION, "carbon", carbon);
  return austeniteDiffusivity(celsius, carbon);
}

/** The same without a range check, for austenite below the temperatures of the source [m²/s]. */
export function austeniteDiffusivity(celsius: number, carbon: number): number {
  const energy = 144300 - 15000 * carbon; // J/mol
  return 1e-4 * (0.146 - 0.036 * carbon) * Math.exp(-energy / (GAS_CONSTANT * (celsius + 273.15)));
}

/** D t / h² at which the first term of the series, (4/π) exp(-π² D t / h²), has fallen to 0.05. */
const EVEN_95 = 0.328;

/**
 * Time for equal alternate layers to even out to 95 %.
 *
 * @param layerMm - Thickness of one layer [mm]
 * @param celsius - Temperature, 850 to 1250 [°C]
 * @param carbon - Mean carbon of the billet, 0.1 to 1.2 [mass %]
 * @returns [min]
 * @throws NotAvailable outside those ranges.
 * Error and source: {@link LAYERS_EVEN}.
 */
export function minutesToEvenOut(layerMm: number, celsius: number, carbon: number): number {
  return (EVEN_95 * (layerMm / 1000) ** 2) / carbonDiffusivity(celsius, carbon) / 60;
}

/**
 * Carbon of a billet once its layers have evened out.
 *
 * @param carbons - Carbon of each steel [mass %]
 * @param shares - Mass of each, in any one unit.
 * @returns [mass %]
 * @throws InvalidValue where the lists differ in length or no mass is given.
 * Error and source: {@link BILLET_MEAN}.
 */
export function billetCarbon(carbons: readonly number[], shares: readonly number[]): number {
  if (carbons.length !== shares.length)
    throw new InvalidValue(
      `${carbons.length} carbon contents but ${shares.length} shares: give one share a steel`,
    );
  const whole = shares.reduce((sum, share) => sum + share, 0);
  if (!(whole > 0))
    throw new InvalidValue(`the shares add up to ${numberText(whole)}: give the mass of each steel`);
  return carbons.reduce((sum, carbon, at) => sum + carbon * (shares[at] ?? 0), 0) / whole;
}
