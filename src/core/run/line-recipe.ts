import { publishedHardening } from "../hardening/hardening-temperature";
import { publishedTreatment } from "../hardening/heat-treatment";
import { soakAtHeat, soakMinutes } from "../hardening/soak";
import { ROOM_C } from "../hardening/sub-zero";
import { numberText, quantityText, temperatureText } from "../quantity-text";
import { attempt, InvalidValue, NotAvailable, Refusal } from "../refusal";
import { treatmentOf } from "../tempering/tempered";
import type { Faults } from "./faulty-cells";
import type { Figure, RecipeLine } from "./line";
import { recipeText } from "./recipe";
import { type PlannedTemper, plannedTemper } from "./temper";

/** How a line is hardened and tempered. Every sheet, paper and function that says so reads this and nothing else. */
export interface LineRecipe {
  /** Middle of the published normalising range [°C]. */
  readonly normaliseC: number | undefined;
  /** Given, else the middle of the published window [°C]; `undefined` where none is held. */
  readonly hardenC: number | undefined;
  /** Soak at that temperature, whole, counted from when the steel has it [min]. */
  readonly soakMinutes: Figure;
  /** In the furnace, heating included, whole [min]. */
  readonly furnaceMinutes: Figure;
  /** The quench with its bath; that of the steel's own sheet where none is given, "" where none is printed. */
  readonly quench: string;
  /** "none", or thickness and place. */
  readonly clay: string;
  /** "none", or temperature and hours. */
  readonly subZero: string;
  /** Temper and what to expect of it. */
  readonly temper: PlannedTemper;
  /** Whether the line hardens, and what its section makes of it. */
  readonly hardening: LineHardening;
  /** In one line, for loads: lines that read the same may share one. */
  readonly text: string;
}

/** Whether the blade hardens where it has to. */
interface LineHardening {
  /** As the story of the blade has it; empty where neither steel nor quench and thickness decide it. */
  readonly word: string;
  /** What the story of the blade does not say itself. */
  readonly caution: string;
}

/** Under clay the spine is meant to stay soft. */
const UNDER_CLAY: LineHardening = {
  word: "edge only, clay",
  caution: "Under clay the spine stays soft: SECTION_QUENCH tells how deep the edge hardens.",
};

function middle(span: { readonly low: number | null; readonly high: number | null } | undefined) {
  const { low = null, high = null } = span ?? {};
  return low === null || high === null ? undefined : Math.round((low + high) / 2);
}

function rounded(minutes: () => number): Figure {
  const found = attempt(minutes, NotAvailable);
  return typeof found === "number" ? Math.ceil(found) : found;
}

function timesOf({ steel }: RecipeLine, section: number | undefined, hardenC: number | undefined) {
  if (section === undefined || hardenC === undefined) {
    return { soakMinutes: undefined, furnaceMinutes: undefined };
  }
  return {
    soakMinutes: rounded(() => soakAtHeat(section, steel.family)),
    furnaceMinutes: rounded(() => soakMinutes(section, hardenC, steel.family).total),
  };
}

function clayText({ clayMm, clayFromMm }: RecipeLine): string {
  if (clayMm === undefined && clayFromMm === undefined) return "none";
  if (clayMm === undefined || clayFromMm === undefined) {
    throw new InvalidValue("clay mm and clay from mm: clay needs both, how thick it is and where it begins");
  }
  return `${quantityText(clayMm, "mm")} from ${quantityText(clayFromMm, "mm")} above the edge to the spine`;
}

function subZeroText({ quenchToC, subZeroHours }: RecipeLine): string {
  if (quenchToC === ROOM_C) return "none";
  const time = subZeroHours === undefined ? "" : `, ${quantityText(subZeroHours, "h")}`;
  return `${temperatureText(quenchToC)}${time}, straight after the quench`;
}

function quenchText({ steel, quench }: RecipeLine): string {
  if (quench !== undefined) return `${quench.word}: ${quench.bath}`;
  return publishedTreatment(steel)?.quench ?? "";
}

function hardeningOf(
  { quench, clayMm }: RecipeLine,
  section: number | undefined,
  { hardening }: PlannedTemper,
): LineHardening {
  if (clayMm !== undefined) return UNDER_CLAY;
  const isUnasked = hardening.word === "not judged" && (quench === undefined || section === undefined);
  return { word: isUnasked ? "" : hardening.word, caution: "" };
}

/** What tells apart lines that otherwise read the same. */
function apart(line: RecipeLine, clay: string, subZero: string): string[] {
  const { temperHours, temperCycles } = line;
  const usual = temperHours === 2 && temperCycles === 1;
  return [
    ...(usual ? [] : [`${temperCycles} × ${numberText(temperHours)} h`]),
    ...(subZero === "none" ? [] : [`sub-zero ${subZero}`]),
    ...(clay === "none" ? [] : [`clay ${clay}`]),
  ];
}

/**
 * How a line is hardened and tempered, decided once: steel, section as hardened, soak, quench with its bath, clay,
 * sub-zero, and tempers counted as the number and hours that are given.
 *
 * @param line - Lengths [mm], temperatures [°C], times [h].
 * @returns Figures that no source gives stand as their refusal.
 * @throws InvalidValue for a malformed target or known temper, and for clay without its place.
 * Error and source: those of `heatTreatment`, `soakMinutes` and `temperPlan`.
 */
export function lineRecipe(line: RecipeLine): LineRecipe {
  const { steel, quench } = line;
  const section = line.sectionMm ?? line.thickness;
  const hardenC = line.hardenC ?? publishedHardening(steel)?.celsius;
  const temper = plannedTemper(line);
  const temperC = typeof temper.celsius === "number" ? temper.celsius : undefined;
  const [clay, subZero] = [clayText(line), subZeroText(line)];
  const base = recipeText({ steel, quench, hardenC: line.hardenC, temperC });
  return {
    normaliseC: middle(publishedTreatment(steel)?.normalise),
    hardenC: hardenC === undefined ? undefined : Math.round(hardenC),
    ...timesOf(line, section, hardenC),
    quench: quenchText(line),
    clay,
    subZero,
    temper,
    hardening: hardeningOf(line, section, temper),
    text: [base, ...apart(line, clay, subZero)].join(", "),
  };
}

/**
 * The same where cells of the line contradict each other: a known temper without its reading and clay without its
 * place are left out and told, so that what does not rest on them is answered.
 *
 * @param given - Cells that could not be read; they stand as if left out.
 * @returns The recipe, the line as it was read, and all faults.
 */
export function recipeBesideFaults<L extends RecipeLine>(line: L, given: Faults) {
  const clay = attempt(() => clayText(line));
  const known = attempt(() => treatmentOf({ ...line, hours: line.temperHours, cycles: line.temperCycles }));
  const hasFault = (cells: readonly (keyof Faults)[]) => cells.some((cell) => given[cell] !== undefined);
  const faults: { -readonly [K in keyof Faults]: Faults[K] } = { ...given };
  const read = { ...line };
  if (clay instanceof Refusal) {
    if (!hasFault(["clayMm", "clayFromMm"])) faults.clayMm = clay;
    Object.assign(read, { clayMm: undefined, clayFromMm: undefined });
  }
  if (known instanceof Refusal) {
    if (!hasFault(["knownC", "knownHrc"])) faults.knownHrc = known;
    Object.assign(read, { knownC: undefined, knownHrc: undefined });
  }
  return { recipe: lineRecipe(read), line: read, faults };
}
