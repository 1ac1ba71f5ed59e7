import { quantityText, temperatureText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import type { Relation } from "../relation";
import { type SteelAsked, steelAsked } from "../steel/asked";
import type { Steel } from "../steel/steel";
import { dissolvedAt } from "./dissolved";
import {
  austeniteOf,
  HIGH_CHROMIUM_AUSTENITE,
  highChromiumStart,
  RETAINED_AUSTENITE,
  retainedAustenite,
} from "./martensite";

/** Above this the rate that depends on composition reads a tenth of practice. */
const HIGH_CHROMIUM = 5;
/** Koistinen and Marburger's rate, 1/K. */
const RATE = 0.011;

/** Coldest and hottest end of a quench that the relations were used for, °C: liquid nitrogen to a hot salt bath. */
export const QUENCH_END = { coldest: -196, hottest: 250 } as const;

/**
 * Austenite left after quench, of what the steel holds in solution.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param hardenC - Hardening temperature [°C]
 * @param quenchToC - Coldest temperature that the quench reaches at once, -196 to 250 [°C]
 * @returns 0 to 100 [%]; above 5 % Cr an order of magnitude.
 * @throws NotAvailable outside -196 to 250 °C, and where `dissolvedAt` refuses.
 * Error and source: {@link RETAINED_AUSTENITE}, {@link HIGH_CHROMIUM_AUSTENITE}.
 */
export function retainedAt(steel: SteelAsked, hardenC: number, quenchToC: number): number {
  steel = steelAsked(steel);
  if (!(quenchToC >= QUENCH_END.coldest && quenchToC <= QUENCH_END.hottest)) {
    throw new NotAvailable(
      `quench to ${temperatureText(quenchToC)} is outside ${temperatureText(QUENCH_END.coldest)} to ` +
        `${quantityText(QUENCH_END.hottest, "°C")}`,
    );
  }
  const austenite = austeniteOf(steel.composition, dissolvedAt(steel, hardenC));
  if (steel.composition.Cr <= HIGH_CHROMIUM) return retainedAustenite(austenite, quenchToC);
  return 100 * Math.exp(-RATE * Math.max(0, highChromiumStart(austenite) - quenchToC));
}

/** The relation behind `retainedAt` for a steel. */
export function retainedRelations(steel: Steel | null): readonly Relation[] {
  if (steel === null) return [RETAINED_AUSTENITE, HIGH_CHROMIUM_AUSTENITE];
  return [steel.composition.Cr > HIGH_CHROMIUM ? HIGH_CHROMIUM_AUSTENITE : RETAINED_AUSTENITE];
}
