import { numberText, temperatureText } from "../quantity-text";
import { attemptOr, InvalidValue, NotAvailable } from "../refusal";
import { checkRange, relation } from "../relation";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { austeniteDiffusivity, CARBON_DIFFUSION } from "../steel/billet";
import { carbonOf } from "../steel/carbon";
import { checkElements, elements } from "../steel/element-ranges";
import type { Steel } from "../steel/steel";
import { criticalPoints } from "./critical-points";

/** Depth of the skin that has lost carbon. */
export const DECARBURISED_SKIN = relation({
  title: "Depth at which nine tenths of the carbon is left",
  source: "diffusion-into-half-space",
  locator: "2.326 √(D t), surface without carbon, D by Lee, Matlock and Van Tyne",
  evidence: "fitted",
  inputs: {
    celsius: { label: "temperature", unit: "°C", min: null, max: 1250 },
    minutes: { label: "time", unit: "min", min: 0, max: 600 },
    ...elements({ C: [0.08, 2.4], Cr: [0, 18.5] }),
  },
  output: { label: "depth", unit: "mm" },
  error: { size: 50, unit: "%", kind: "half-width, estimate: air, scale and silicon change it" },
  note:
    "Bare steel in air; foil, salt or a coat keep it near 0. From Ac1 up; below 850 °C (1562 °F) a rim of ferrite is added, deepest near " +
    "800 °C (1472 °F): within a factor of 2 there. Above 1.8 % Cr an upper estimate, since chromium slows carbon and carbide feeds it: within a factor of 2 too.",
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

const GAS_CONSTANT = 8.314;

/** x / √(D t) where erf(x / 2√(D t)) is 0.9. */
const NINE_TENTHS = 2.326;

/** Ferrite dissolves no more carbon than this at the eutectoid, and none where it ends [mass %], [°C]. */
const FERRITE = { carbon: 0.022, eutectoidC: 727, endC: 912 };
/** From here on the rim of ferrite thins out, and it is gone 50 °C higher [°C]. */
const RIM = { thinsFromC: 800, goneC: 850 };

/** Diffusivity of carbon in ferrite [m²/s], Callister from memory. */
function ferriteDiffusivity(celsius: number): number {
  return 6.2e-7 * Math.exp(-80_000 / (GAS_CONSTANT * (celsius + 273.15)));
}

/** Thickness of the ferrite rim that grows below 850 °C, fed by the carbon that ferrite carries off [m]. */
function ferriteRim(carbon: number, celsius: number, seconds: number): number {
  const share = Math.min(1, Math.max(0, (RIM.goneC - celsius) / (RIM.goneC - RIM.thinsFromC)));
  const span = FERRITE.endC - FERRITE.eutectoidC;
  const solubility = (FERRITE.carbon * (FERRITE.endC - celsius)) / span;
  return share * Math.sqrt((2 * ferriteDiffusivity(celsius) * Math.max(0, solubility) * seconds) / carbon);
}

/** Ac1 of stainless and tool steels without a card [°C]: common practice, no source. */
const USUAL_ALLOY_AC1 = 790;

/** Refuses a temperature at which the steel does not lose carbon as austenite. */
function checkAboveCritical(steel: Steel, celsius: number): void {
  const points = attemptOr(null, () => criticalPoints(steel));
  const ac1 = points?.ac1 ?? (steel.composition.Cr > LEAN_CHROMIUM ? USUAL_ALLOY_AC1 : MIN_AC1);
  if (celsius >= ac1) return;
  throw new NotAvailable(
    `temperature ${temperatureText(celsius)} is below the lower critical temperature of ${steel.name}, about ` +
      `${temperatureText(ac1)}: "${DECARBURISED_SKIN.title}" starts there`,
  );
}

/** Lowest Ac1 of lean steels where no equation answers [°C]. */
const MIN_AC1 = 727;
/** Up to here the estimate is good to half either way [mass %]. */
const LEAN_CHROMIUM = 1.8;
/** More carbon than this stays in carbide [mass %]. */
const MAX_DISSOLVED = 1.2;

/**
 * Depth of the decarburised skin, to where 90 % of the carbon is left.
 *
 * @param steel - A grade or an analysis, up to 18.5 % Cr.
 * @param celsius - Temperature of the steel, from Ac1 to 1250 [°C]
 * @param minutes - Time at it, 0 to 600 [min]
 * @returns [mm], good to half either way; to a factor of 2 below 850 °C and above 1.8 % Cr.
 * @throws NotAvailable outside those ranges.
 * Error and source: {@link DECARBURISED_SKIN}.
 */
export function decarbDepth(steel: SteelAsked, celsius: number, minutes: number): number {
  steel = steelAsked(steel);
  const carbon = carbonOf(steel);
  checkRange(DECARBURISED_SKIN, "celsius", celsius);
  checkRange(DECARBURISED_SKIN, "minutes", minutes);
  checkElements(DECARBURISED_SKIN, { ...steel.composition, C: carbon });
  checkAboveCritical(steel, celsius);
  const seconds = minutes * 60;
  const inAustenite = Math.min(carbon, MAX_DISSOLVED);
  const gradient = NINE_TENTHS * Math.sqrt(austeniteDiffusivity(celsius, inAustenite) * seconds);
  return 1000 * (gradient + ferriteRim(inAustenite, celsius, seconds));
}

/** Volume of mixed scale to that of the metal in it. */
const SCALE_TO_METAL = 2;

/**
 * Metal lost to scale on one face, scale knocked off after each heat.
 *
 * @param celsius - 700 to 1250 [°C]
 * @param minutes - Time at temperature in all [min]
 * @param heats - Equal heats that the time was spent in, from 1.
 * @returns [mm]
 * @throws NotAvailable outside the temperatures.
 * Error and source: {@link SCALE_LOSS}.
 */
export function scaleLoss(celsius: number, minutes: number, heats: number): number {
  checkRange(SCALE_LOSS, "celsius", celsius);
  const k = 6.1 * Math.exp(-169452 / (GAS_CONSTANT * (celsius + 273.15))); // cm²/s
  const onceMm = 10 * Math.sqrt((k * minutes * 60) / heats);
  return (heats * onceMm) / SCALE_TO_METAL;
}

/** What has to come off a face. */
export interface GrindAllowance {
  /** Skin and scale together, off each face [mm]. */
  readonly skinMm: number;
  /** What to do about it, in words. */
  readonly advice: string;
}

/**
 * Stock to leave on each face for grinding after forging or hardening.
 *
 * @param steel - A grade or an analysis, up to 18.5 % Cr.
 * @param celsius - Temperature of the steel, from Ac1 to 1250 [°C]
 * @param minutes - Time at it over all heats, 0 to 600 [min]
 * @param heats - Number of heats, a whole number from 1, each brushed clean of scale.
 * @returns Skin a face [mm], and what it is made of.
 * @throws NotAvailable as `decarbDepth` and `scaleLoss` do; InvalidValue for a number of heats that is not whole.
 * Error and source: {@link DECARBURISED_SKIN}, {@link SCALE_LOSS}.
 */
export function grindAllowance(
  steel: SteelAsked,
  celsius: number,
  minutes: number,
  heats: number,
): GrindAllowance {
  steel = steelAsked(steel);
  if (!Number.isInteger(heats) || heats < 1) {
    throw new InvalidValue(`${numberText(heats)} heats given: it must be a whole number, 1 or more`);
  }
  const skin = decarbDepth(steel, celsius, minutes);
  const scale = scaleLoss(celsius, minutes, heats);
  const skinMm = skin + scale;
  const isRough = celsius < RIM.goneC || steel.composition.Cr > LEAN_CHROMIUM;
  const most = isRough ? 2 : 1.5;
  const mm = (value: number) => value.toFixed(2);
  const advice =
    `leave ${mm(skinMm)} mm a face at ${temperatureText(celsius)}: ${mm(skin)} mm short of carbon, ${mm(scale)} mm gone to scale; ` +
    `between ${mm(skinMm / 2)} and ${mm(skinMm * most)} mm; a file must bite evenly before the edge is set`;
  return { skinMm, advice };
}

/** The relations behind `decarbDepth`. */
export const DECARB_RELATIONS = [DECARBURISED_SKIN, CARBON_DIFFUSION] as const;
