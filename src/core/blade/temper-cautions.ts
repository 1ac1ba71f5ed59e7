import { betweenText, quantityText, temperatureText } from "../quantity-text";
import type { Steel } from "../steel/steel";
import { type BrittleRange, brittleRanges, rangeText } from "../tempering/embrittlement";
import type { Use } from "./bands";
import { type Caution, caution } from "./caution";

/** A temper as a caution names it. */
export interface NamedTemper {
  readonly celsius: number;
  /** How it came to be known: "" where it was given. */
  readonly how: string;
}

function rangeCaution(use: Use | undefined, steel: Steel, temper: NamedTemper, range: BrittleRange): Caution {
  const at = `${temperatureText(temper.celsius)}${temper.how}`;
  if (range.bySlowCooling) {
    return caution(
      "spoils the blade",
      "cool fast from the temper: slow cooling embrittles",
      `Cool fast from the temper, ${at}: slow cooling ${betweenText(range.low, range.high, "°C")} embrittles ${steel.name}.`,
    );
  }
  const struck = use === undefined || use.service === "impact" || steel.family.endsWith("stainless");
  const why = struck ? range.advice : "it matters less where nothing is struck";
  return caution(
    struck ? "spoils the blade" : "note",
    struck ? "temper lies in the brittle range" : "brittle range; it matters less where nothing is struck",
    `Temper ${at} lies in the embrittlement range ${rangeText(range)}: ${why}.`,
  );
}

/** Embrittlement ranges that a blade was or would be tempered in. */
export function temperCautions(use: Use | undefined, steel: Steel, temper: NamedTemper): Caution[] {
  return brittleRanges(steel)
    .filter(({ low, high }) => temper.celsius >= low && temper.celsius <= high)
    .map((range) => rangeCaution(use, steel, temper, range));
}

/** How a temper is named that only a hardness stands for. */
export function impliedBy(hrc: number, hours: number): string {
  return ` (what ${quantityText(Math.round(hrc * 10) / 10, "HRC")} implies, ${quantityText(hours, "h")})`;
}
