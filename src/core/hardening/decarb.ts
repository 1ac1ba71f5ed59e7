import { numberText, temperatureText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { checkRange, relation } from "../relation";
import { CARBON_DIFFUSION, carbonDiffusivity } from "../steel/billet";
import { carbonOf } from "../steel/carbon";
import { checkElements, elements } from "../steel/element-ranges";
import type { Steel } from "../steel/steel";

/** Depth of the skin that has lost carbon. */
export const DECARBURISED_SKIN = relation({
  title: "Depth at which nine tenths of the carbon is left",
  source: "diffusion-into-half-space",
  locator: "2.326 √(D t), surface without carbon, D by Lee, Matlock and Van Tyne",
  evidence: "fitted",
  inputs: {
    celsius: { label: "temperature", unit: "°C", min: 850, max: 1250 },
    minutes: { label: "time", unit: "min", min: 0, max: 600 },
    ...elements({ C: [0.1, 1.2], Cr: [0, 1.8] }),
  },
  output: { label: "depth", unit: "mm" },
  error: { size: 50, unit: "%", kind: "half-width, estimate: air, scale and silicon change it" },
  note: "Bare steel in air; foil, salt or a coat keep it near 0. Below 850 °C (1562 °F) a skin of ferrite grows that this does not follow, deepest near 800 °C (1472 °F).",
});

/** Metal that scale takes. */
export const SCALE_LOSS = relation({
  title: "Metal lost to scale on one face",
  source: "iron-scale-growth",
  locator: "x² = k t with k = 6.1 exp(-169452/RT) cm²/s; half the scale was metal",
  evidence: "fitted",
  inputs: { celsius: { label: "temperature", unit: "°C", min: 700, max: 1250 } },
  output: { label: "loss", unit: "mm" },
  error: {
    size: 50,
    unit: "%",
    kind: "half-width, from memory; chromium and silicon slow it, a rich flame or blast changes it",
  },
});

/** x / √(D t) where erf(x / 2√(D t)) is 0.9. */
const NINE_TENTHS = 2.326;

/**
 * Depth of the decarburised skin.
 *
 * @param steel - A grade or an analysis, up to 1.8 % Cr.
 * @param celsius - Temperature of the steel, 850 to 1250 °C.
 * @param minutes - Time at it, 0 to 600.
 * @returns mm to where 90 % of the carbon is left, good to half either way.
 * @throws NotAvailable outside those ranges.
 */
export function decarbDepth(steel: Steel, celsius: number, minutes: number): number {
  const carbon = carbonOf(steel);
  checkRange(DECARBURISED_SKIN, "celsius", celsius);
  checkRange(DECARBURISED_SKIN, "minutes", minutes);
  checkElements(DECARBURISED_SKIN, { ...steel.composition, C: carbon });
  return 1000 * NINE_TENTHS * Math.sqrt(carbonDiffusivity(celsius, carbon) * minutes * 60);
}

const GAS_CONSTANT = 8.314;
/** Volume of mixed scale to that of the metal in it. */
const SCALE_TO_METAL = 2;

/**
 * Metal lost to scale on one face, scale knocked off after each heat.
 *
 * @param celsius - 700 to 1250 °C.
 * @param minutes - Time at temperature in all.
 * @param heats - Equal heats that the time was spent in.
 * @returns mm.
 */
export function scaleLoss(celsius: number, minutes: number, heats: number): number {
  checkRange(SCALE_LOSS, "celsius", celsius);
  const k = 6.1 * Math.exp(-169452 / (GAS_CONSTANT * (celsius + 273.15))); // cm²/s
  const onceMm = 10 * Math.sqrt((k * minutes * 60) / heats);
  return (heats * onceMm) / SCALE_TO_METAL;
}

/** What has to come off a face. */
export interface GrindAllowance {
  /** mm, skin and scale together. */
  readonly skinMm: number;
  readonly advice: string;
}

/**
 * Stock to leave on each face for grinding after forging or hardening.
 *
 * @param steel - A grade or an analysis, up to 1.8 % Cr.
 * @param celsius - Temperature of the steel, 850 to 1250 °C.
 * @param minutes - Time at it over all heats.
 * @param heats - Number of heats, each brushed clean of scale.
 * @returns mm a face, and what it is made of.
 */
export function grindAllowance(
  steel: Steel,
  celsius: number,
  minutes: number,
  heats: number,
): GrindAllowance {
  if (!Number.isInteger(heats) || heats < 1) {
    throw new InvalidValue(`${numberText(heats)} heats given: it must be a whole number, 1 or more`);
  }
  const skin = decarbDepth(steel, celsius, minutes);
  const scale = scaleLoss(celsius, minutes, heats);
  const skinMm = skin + scale;
  const mm = (value: number) => value.toFixed(2);
  const advice =
    `leave ${mm(skinMm)} mm a face at ${temperatureText(celsius)}: ${mm(skin)} mm short of carbon, ${mm(scale)} mm gone to scale; ` +
    `between ${mm(skinMm / 2)} and ${mm(skinMm * 1.5)} mm; a file must bite evenly before the edge is set`;
  return { skinMm, advice };
}

/** The relations behind `decarbDepth`. */
export const DECARB_RELATIONS = [DECARBURISED_SKIN, CARBON_DIFFUSION] as const;
