import { assess } from "../blade/assess";
import { asSentence, fahrenheit, numberText, quantityText } from "../quantity-text";
import { attempt, InvalidValue, NotAvailable } from "../refusal";
import { limitsCaution } from "../steel/composition-text";
import { temperFor } from "../tempering/temper-for";
import type { KnownTemper, Treatment } from "../tempering/tempered";
import { temperedRange } from "../tempering/tempered-range";
import { temperModel } from "../tempering/tempering-model";
import type { Figure, PlanLine } from "./line";

/** Temper to start from, what to expect of it, and how that stands against the band of the use. */
export interface PlannedTemper {
  /** HRC, whole. */
  readonly low: Figure;
  readonly high: Figure;
  /** °C, whole. */
  readonly celsius: Figure;
  readonly fahrenheit: Figure;
  /** Empty where no use is given. */
  readonly status: string;
  readonly cautions: readonly string[];
}

const NOTHING = { low: undefined, high: undefined, celsius: undefined, fahrenheit: undefined };

function knownOf({ knownC, knownHrc }: PlanLine): KnownTemper | undefined {
  if (knownC === undefined && knownHrc === undefined) return undefined;
  if (knownC === undefined || knownHrc === undefined) {
    throw new InvalidValue("known C and known HRC: a known temper needs both, the temper and what it read");
  }
  return { celsius: knownC, hrc: knownHrc };
}

function treatmentOf(line: PlanLine): Treatment {
  const { temperHours: hours, temperCycles: cycles, hardenC } = line;
  return { hours, cycles, known: knownOf(line), hardenC };
}

interface Expected {
  readonly celsius: number;
  readonly low: number;
  readonly high: number;
  /** Where the hardness comes from and what it takes for granted. */
  readonly basis: string;
}

function expected(line: PlanLine, target: number): Expected {
  const { steel, hardenC } = line;
  const treatment = treatmentOf(line);
  const celsius = Math.round(temperFor(steel, target, treatment));
  const { low, high, basis } = temperedRange(steel, celsius, treatment);
  const { assumptions } = temperModel(steel, hardenC);
  const parts = [basis, ...assumptions, limitsCaution(steel)].filter((part) => part !== "");
  const text = `Hardness of a blade hardened through: ${parts.join("; ")}.`;
  return { celsius, low: Math.round(low), high: Math.round(high), basis: text };
}

/** The target itself may lie outside the band where the range around it still straddles its end. */
function targetCaution({ use, target }: PlanLine, status: string): string[] {
  if (use === undefined || target === undefined || status === "HIGH" || status === "LOW") return [];
  if (target >= use.low && target <= use.high) return [];
  const side = target > use.high ? "above" : "below";
  return [
    `The target ${quantityText(target, "HRC")} lies ${side} the usual ${numberText(use.low)} to ` +
      `${quantityText(use.high, "HRC")} for "${use.word}".`,
  ];
}

function judged(line: PlanLine, low: number, high: number, temperC: number | undefined) {
  const { use, steel, length, quench } = line;
  if (use === undefined) return { status: "", cautions: [] };
  const { status, cautions } = assess({ use, steel, low, high, length, quench, temperC });
  return { status, cautions: [...targetCaution(line, status), ...cautions] };
}

/**
 * Temper of a line: for the target, or where none is given for the aim of the use's band.
 *
 * @returns Figures that no published curve gives stand as their refusal, the band is then judged by the
 *   target alone.
 * @throws InvalidValue for a malformed target or known temper.
 */
export function plannedTemper(line: PlanLine): PlannedTemper {
  const target = line.target ?? line.use?.aim;
  if (target === undefined) return { ...NOTHING, status: "", cautions: [] };
  const found = attempt(() => expected(line, target), NotAvailable);
  if (found instanceof NotAvailable) {
    const { status, cautions } = judged(line, target, target, undefined);
    const why = asSentence(found.message);
    const rest = cautions.filter((caution) => !caution.startsWith("No temper is implied"));
    const refused = { low: found, high: found, celsius: found, fahrenheit: found };
    return { ...refused, status, cautions: [why, ...rest] };
  }
  const { celsius, low, high, basis } = found;
  const { status, cautions } = judged(line, low, high, celsius);
  return {
    low,
    high,
    celsius,
    fahrenheit: Math.round(fahrenheit(celsius)),
    status,
    cautions: [...cautions, basis],
  };
}
