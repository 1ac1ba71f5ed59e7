import { type Caution, caution, ranked } from "../blade/caution";
import { chanceText } from "../blade/chance";
import { hardeningCautions } from "../blade/hardness-cautions";
import { isKeptSoft } from "../blade/next-step";
import type { BladeQuestion, BladeStory } from "../blade/question";
import { bladeStory } from "../blade/story";
import { withinWords } from "../cell-text";
import { asSentence, fahrenheit, quantityText, temperatureText } from "../quantity-text";
import { attemptOr } from "../refusal";
import { limitsCaution } from "../steel/composition-text";
import { mustCoolFast } from "../tempering/embrittlement";
import { treatmentOf } from "../tempering/tempered";
import { temperModel } from "../tempering/tempering-model";
import type { Figure, RecipeLine } from "./line";

/** Temper to start from, what to expect of it, and how that stands against the band of the use. */
export interface PlannedTemper {
  /** Lower end of the hardness expected, whole [HRC]. */
  readonly low: Figure;
  /** Upper end of it, whole [HRC]. */
  readonly high: Figure;
  /** Temper to start from, whole [°C]. */
  readonly celsius: Figure;
  /** The same temper, whole [°F]. */
  readonly fahrenheit: Figure;
  /** Empty where no use is given. */
  readonly status: string;
  /** That a reading lies in the band, 0 to 1 [-]. */
  readonly chance: number | undefined;
  /** What to do next, one sentence. */
  readonly next: string;
  /** "2 × 2 h at 228 °C (442 °F)"; empty without a temper. */
  readonly tempers: string;
  /** Whether the blade hardens, and how deep. */
  readonly hardening: BladeStory["hardening"];
  /** What to be wary of, as found; what the figures rest on comes last. */
  readonly cautions: readonly Caution[];
}

const NOTHING = { low: undefined, high: undefined, celsius: undefined, fahrenheit: undefined };

/** Where the hardness comes from and what it takes for granted. */
function basisCaution({ steel, hardenC }: RecipeLine, basis: string): Caution[] {
  if (basis === "") return [];
  const assumptions = attemptOr([], () => temperModel(steel, hardenC).assumptions);
  const lead = `Hardness of a blade hardened through: ${basis}`;
  const full = `${withinWords([lead, ...assumptions, limitsCaution(steel)])}.`;
  return [caution("note", "hardness by estimate", full)];
}

/** Which way the temper was chosen, where no target was typed. */
function chosenCaution({ use }: RecipeLine, story: BladeStory): Caution[] {
  const { isForBand, best, temperC, chance } = story;
  if (use === undefined || !isForBand || best === undefined || temperC === undefined || chance === undefined)
    return [];
  const chosen = `No target typed: ${temperatureText(temperC)} has the best chance of the band`;
  const full =
    best.avoided === undefined
      ? `${chosen}, ${chanceText(chance)}.`
      : `${chosen} outside the brittle range, ${chanceText(chance)}; ${temperatureText(best.avoided.celsius)} would give ${chanceText(best.avoided.chance)}.`;
  return isKeptSoft(story)
    ? [caution("spoils the blade", "soft: a harder temper is brittle", full)]
    : [caution("note", "no target typed", full)];
}

function questionOf(line: RecipeLine): BladeQuestion {
  const { steel, use, length, quench, target, chosenC, clayMm } = line;
  // Under clay only the edge has to harden: the thickness of the spine does not bear on it.
  const thickness = clayMm === undefined ? (line.sectionMm ?? line.thickness) : undefined;
  const typed = { temperC: chosenC?.celsius, temperHasUnit: chosenC?.hasUnit };
  const treatment = treatmentOf({ ...line, hours: line.temperHours, cycles: line.temperCycles });
  return { steel, use, length, thickness, quench, target, treatment, ...typed };
}

function temperText({ steel, temperHours, temperCycles }: RecipeLine, celsius: number): string {
  // Whoever tempers reads this and nothing else: a steel that turns brittle while it cools slowly must not.
  const fast = mustCoolFast(steel, celsius) ? ", cooled fast from it" : "";
  return `${temperCycles} × ${quantityText(temperHours, "h")} at ${temperatureText(celsius)}${fast}`;
}

/**
 * Temper of a line: for the target, or where none is given the one with the best chance of the use's band.
 *
 * @returns Figures that no published curve gives stand as their refusal.
 * @throws InvalidValue for a malformed target or known temper.
 */
export function plannedTemper(line: RecipeLine): PlannedTemper {
  const { target, use, chosenC } = line;
  const question = questionOf(line);
  const story = bladeStory(question);
  const { status, chance, next, estimate, temperC, missing, hardening, cautions } = story;
  const told = { status, chance, next, hardening };
  if (target === undefined && use === undefined && chosenC === undefined) {
    const found = hardeningCautions(question, hardening);
    return { ...NOTHING, ...told, tempers: "", next: "", cautions: found };
  }
  if (estimate === undefined || temperC === undefined) {
    const refused =
      missing === undefined
        ? NOTHING
        : { low: missing, high: missing, celsius: missing, fahrenheit: missing };
    const why =
      missing === undefined || cautions.length > 0
        ? []
        : [caution("note", "hardness not known", asSentence(missing.message))];
    return { ...refused, ...told, tempers: "", cautions: [...why, ...cautions] };
  }
  return {
    low: Math.round(estimate.low),
    high: Math.round(estimate.high),
    celsius: temperC,
    fahrenheit: Math.round(fahrenheit(temperC)),
    ...told,
    tempers: temperText(line, temperC),
    cautions: ranked([...chosenCaution(line, story), ...cautions, ...basisCaution(line, story.basis)]),
  };
}
