import type { QuenchMedium } from "../hardening/quench-media";
import { numberText, quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import type { Steel } from "../steel/steel";
import type { Use } from "./bands";
import { quenchCautions } from "./quench-cautions";
import { type BandStatus, judge, TESTER_HRC } from "./status";
import { steelCautions } from "./steel-cautions";
import { temperCautions } from "./temper-cautions";

/** A blade to be judged: what it is for, of what, how hard, and what else is known. */
export interface BladeQuestion {
  readonly use: Use;
  readonly steel: Steel;
  /** HRC, a single figure or the low end of a range. */
  readonly low: number;
  /** HRC, the high end. */
  readonly high?: number | undefined;
  /** mm */
  readonly length?: number | undefined;
  readonly quench?: QuenchMedium | undefined;
  /** Temper of the steel itself, °C; implied from the hardness where left out. */
  readonly temperC?: number | undefined;
}

export interface Assessment {
  readonly status: BandStatus;
  /** Sentences, the most pressing first; none is never a promise that the blade is safe. */
  readonly cautions: readonly string[];
}

/** Narrower than this no tester and furnace hold together, HRC. */
const NARROWEST_HRC = 2;

function hardnessText(low: number, high: number): string {
  return low === high ? quantityText(low, "HRC") : `${numberText(low)} to ${quantityText(high, "HRC")}`;
}

/** A range wider than a tester's own doubt comes from an estimate, a narrower one from readings. */
function doubtCaution(use: Use, given: string, low: number, high: number): string {
  const cause =
    high - low > 2 * TESTER_HRC
      ? "the estimate is that wide: test a coupon of this heat"
      : `a tester may be out by ${TESTER_HRC} HRC: take more readings`;
  return `${given} may lie outside ${use.low} to ${quantityText(use.high, "HRC")}: ${cause}; in doubt the softer side.`;
}

function bandCaution(use: Use, status: BandStatus, low: number, high: number): string[] {
  const given = hardnessText(low, high);
  const band = `the usual ${use.low} to ${quantityText(use.high, "HRC")} for "${use.word}"`;
  switch (status) {
    case "HIGH":
      return [
        `${given} is above ${band}: temper further before the finish grind; a chip must be ground out.`,
      ];
    case "LOW":
      return [
        `${given} is below ${band}: tougher, but the edge will not last. Only hardening again makes it harder.`,
      ];
    case "DOUBTFUL":
      return [doubtCaution(use, given, low, high)];
    default:
      return [];
  }
}

function ceilingCaution({ ceiling }: Use, high: number): string[] {
  if (ceiling === null || high <= ceiling) return [];
  return [
    `Hard targets: ${quantityText(ceiling, "HRC")} at most (common practice, no source); better rolled than chipped.`,
  ];
}

function narrowCaution(low: number, high: number): string[] {
  if (high === low || high - low >= NARROWEST_HRC) return [];
  return [
    `A range narrower than ${NARROWEST_HRC} HRC is tighter than a tester and a furnace can hold together.`,
  ];
}

function basisCaution({ evidence }: Use): string[] {
  return evidence === "common practice" ? ["The band is common practice, no source."] : [];
}

/**
 * Judges a hardness for a use and says what the trade would be wary of. It never calls a blade safe.
 *
 * @param question - Use, steel, hardness [HRC] and what else is known.
 * @returns Where the hardness lies in the usual band, and cautions as sentences.
 * @throws InvalidValue where the high end lies under the low end.
 */
export function assess(question: BladeQuestion): Assessment {
  const { use, steel, low, high = low, quench } = question;
  if (high < low) {
    throw new InvalidValue(`HRC ${numberText(low)} to ${numberText(high)}: give the low end first`);
  }
  const status = judge(use, low, high);
  const judged = bandCaution(use, status, low, high);
  const isDoubtful = status === "DOUBTFUL";
  const cautions = [
    ...(isDoubtful ? [] : judged),
    ...ceilingCaution(use, high),
    ...steelCautions(question),
    ...temperCautions({ ...question, high }),
    ...quenchCautions(steel, quench),
    ...(isDoubtful ? judged : []),
    ...narrowCaution(low, high),
    ...basisCaution(use),
  ];
  return { status, cautions: [...new Set(cautions)] };
}
