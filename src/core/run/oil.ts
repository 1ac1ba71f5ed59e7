import { celsiusOf, temperatureText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { relation } from "../relation";
import { heatContent } from "./heat-content";

/** Rise of quench oil. */
export const OIL_HEAT = relation({
  title: "Temperature rise of quench oil",
  source: "oil-one-to-one",
  locator: "heat given off by the steel ÷ (litres × density × specific heat)",
  evidence: "standard",
  inputs: { temperature: { label: "temperature", unit: "°C", min: 20, max: 1200 } },
  output: { label: "rise", unit: "K" },
  error: {
    size: null,
    unit: "K",
    kind: "no error stated; heat lost to the tank and the air is left out, so the rise is rather high",
  },
  note:
    "Usual oil 0.87 kg/L and 2.0 kJ/(kg K) (common practice, no source). The trade's rule of one US gallon a pound, " +
    "8.3 litres a kg, gives a rise of about 38 °C as a difference (70 °F).",
});

/** Distance to keep from the flash point. */
export const FLASH_MARGIN = relation({
  title: "Distance of quench oil from its flash point",
  source: "cfr-1910-126",
  locator: "alarm within 50 °F of the flash point, a difference of 27.8 K",
  evidence: "standard",
  inputs: {},
  output: { label: "margin", unit: "K" },
  error: { size: 0, unit: "K", kind: "a rule, not a measurement; local codes may ask for more" },
  note: "The surface of the bath around a hot blade is hotter than the oil as a whole: mix it well.",
});

/** What goes into the oil. */
export interface Quench {
  /** Steel of one quench, above 0 [kg]. */
  readonly mass: number;
  /** Steel as it goes in, 20 to 1200 [°C]. */
  readonly from: number;
  /** Steel as it comes out, 20 to 1200 and below `from` [°C]. */
  readonly to: number;
}

export interface Oil {
  /** Of the oil, above 0 [kg/L]. */
  readonly density: number;
  /** Of the oil, above 0 [kJ/(kg K)]. */
  readonly specificHeat: number;
}

/** A bath before the quench. */
export interface OilBath extends Oil {
  /** Oil in the bath, above 0 [L]. */
  readonly litres: number;
  /** Oil before the quench [°C]. */
  readonly start: number;
  /** Of the oil [°C]; `undefined` where it is not known. */
  readonly flashPoint: number | undefined;
}

export interface OilRise {
  /** How much the oil warms [K]. */
  readonly rise: number;
  /** Oil after the quench [°C]. */
  readonly final: number;
  /** Empty where there is nothing to say. */
  readonly caution: string;
}

/** The oil most shops use. */
export const USUAL_OIL: Oil = { density: 0.87, specificHeat: 2 };

/** 50 °F as a difference, K: the distance that 29 CFR 1910.126 asks an alarm for. */
const FLASH_MARGIN_K = celsiusOf(50) - celsiusOf(0);

/** Heat that the steel gives off, kJ. */
function heatGiven({ mass, from, to }: Quench): number {
  if (from > to) return mass * heatContent(to, from);
  throw new InvalidValue(
    `the steel goes in at ${temperatureText(from)} and comes out at ${temperatureText(to)}: ` +
      "give the hotter temperature first",
  );
}

function flashCaution(final: number, flashPoint: number | undefined): string {
  if (flashPoint === undefined) return "flash point not given: take it from the oil's data sheet";
  if (final >= flashPoint) {
    return `DANGER: the oil would reach ${temperatureText(final)}, its flash point is ${temperatureText(flashPoint)}: more oil, or fewer blades`;
  }
  if (final <= flashPoint - FLASH_MARGIN_K) return "";
  return (
    `the oil would reach ${temperatureText(final)}, within 28 K (50 °F as a difference) of its flash point ` +
    `${temperatureText(flashPoint)}: more oil, or fewer blades, or let it cool`
  );
}

function endCaution(final: number, to: number): string {
  if (final <= to) return "";
  return (
    `the oil ends hotter, ${temperatureText(final)}, than the ${temperatureText(to)} given for the steel: ` +
    "the rise is a little too high"
  );
}

/**
 * What a quench does to the oil.
 *
 * @param quench - Mass [kg] and temperatures of the steel [°C]
 * @param bath - Oil [L], start and flash point of the oil [°C]
 * @returns Rise [K] and final temperature of the oil [°C], with what to be wary of.
 * @throws InvalidValue for steel that does not cool, or oil at or above its flash point before the quench.
 * @throws NotAvailable for steel outside 20 to 1200 °C.
 * Error and source: {@link OIL_HEAT}, {@link FLASH_MARGIN}.
 */
export function oilRise(quench: Quench, bath: OilBath): OilRise {
  const { litres, start, flashPoint, density, specificHeat } = bath;
  if (flashPoint !== undefined && start >= flashPoint) {
    throw new InvalidValue(
      `oil start ${temperatureText(start)} is not below the flash point ${temperatureText(flashPoint)}: do not quench`,
    );
  }
  const rise = heatGiven(quench) / (litres * density * specificHeat);
  const final = start + rise;
  const cautions = [flashCaution(final, flashPoint), endCaution(final, quench.to)];
  return { rise, final, caution: cautions.filter((sentence) => sentence !== "").join("; ") };
}

/**
 * Oil that keeps the rise to what is wanted.
 *
 * @param quench - Mass [kg] and temperatures of the steel, 20 to 1200 [°C]
 * @param rise - Allowed rise, above 0 [K]
 * @param oil - Density [g/cm³] and specific heat [kJ/kgK]
 * @returns [L]
 * @throws InvalidValue for steel that does not cool; NotAvailable for steel outside 20 to 1200 °C.
 * Error and source: {@link OIL_HEAT}.
 */
export function oilLitres(quench: Quench, rise: number, { density, specificHeat }: Oil = USUAL_OIL): number {
  return heatGiven(quench) / (rise * density * specificHeat);
}
