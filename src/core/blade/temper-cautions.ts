import { quantityText, temperatureText } from "../quantity-text";
import { Refusal } from "../refusal";
import type { Steel } from "../steel/steel";
import { brittleRanges, embrittlementCaution } from "../tempering/embrittlement";
import { temperFor } from "../tempering/temper-for";
import type { Use } from "./bands";

/** The temper that a hardness stands for, where none is told. */
const USUAL_TREATMENT = { hours: 2, cycles: 1 };

interface TemperQuestion {
  readonly use: Use;
  readonly steel: Steel;
  /** HRC */
  readonly low: number;
  readonly high: number;
  /** °C */
  readonly temperC?: number | undefined;
}

interface KnownOrImplied {
  readonly celsius: number;
  /** How the temper came to be known, for the sentence; empty where it was given. */
  readonly how: string;
}

/** From here up the ranges are those of slow cooling, which a softer temper does not leave, °C. */
const SLOW_COOLING_FROM = 375;

/** Which way to go from an embrittlement range, by how the blade is used. */
function leaning({ use, steel }: TemperQuestion, celsius: number): string {
  if (steel.family.endsWith("stainless")) return " Lean to a lower temper.";
  const isIn = ({ low, high }: { low: number; high: number }) => celsius >= low && celsius <= high;
  if (!brittleRanges(steel).some((range) => isIn(range) && range.low < SLOW_COOLING_FROM)) return "";
  if (use.service === "impact") {
    return ` Lean to the softer end, near ${quantityText(use.low, "HRC")}, and break a sample before the run.`;
  }
  return " It matters less where nothing is struck.";
}

function impliedTemper({ steel, low, high }: TemperQuestion): KnownOrImplied {
  const hrc = (low + high) / 2;
  const celsius = temperFor(steel, hrc, USUAL_TREATMENT);
  return { celsius, how: ` (what ${quantityText(hrc, "HRC")} implies, ${USUAL_TREATMENT.hours} h)` };
}

function brittleCaution(question: TemperQuestion, { celsius, how }: KnownOrImplied): string[] {
  const range = embrittlementCaution(question.steel, celsius);
  if (range === "") return [];
  return [`Temper ${temperatureText(celsius)}${how}: ${range}.${leaning(question, celsius)}`];
}

/**
 * Embrittlement ranges that a blade was or would be tempered in, as sentences. Where the hardness has no
 * temper in the steel (out of reach, two answers, no curve) the sentence says so.
 */
export function temperCautions(question: TemperQuestion): string[] {
  const { temperC } = question;
  if (temperC !== undefined) return brittleCaution(question, { celsius: temperC, how: "" });
  try {
    return brittleCaution(question, impliedTemper(question));
  } catch (thrown) {
    if (thrown instanceof Refusal) return [`No temper is implied: ${thrown.message}.`];
    throw thrown;
  }
}
