import { findUse, type Use } from "../blade/bands";
import { findQuench, type QuenchMedium } from "../hardening/quench-media";
import { ROOM_C } from "../hardening/sub-zero";
import { InvalidValue, type Refusal } from "../refusal";
import { findGrind, type Grind, USUAL_GRIND } from "../shape/grinds";
import { type SteelAsked, steelAsked } from "../steel/asked";
import type { Steel } from "../steel/steel";
import { USUAL_KERF, USUAL_TRIM } from "../stock/cutting-limits";
import type { TypedTemper } from "../tempering/fahrenheit";
import { USUAL_CYCLES, USUAL_HOURS } from "../tempering/hollomon-jaffe";
import { wordAsked } from "../word-list";
import type { LearningModel } from "./learning";
import { USUAL_CONFIDENCE } from "./starts";

/** A figure of a plan: worked out, declined with its sentence, or not asked for. */
export type Figure = number | Refusal | undefined;

/** The blade of a line. Lengths in mm. */
interface PlannedBlade {
  readonly use: Use | undefined;
  readonly steel: Steel;
  readonly length: number | undefined;
  readonly width: number | undefined;
  readonly thickness: number | undefined;
  readonly grind: Grind;
  readonly tipWidth: number | undefined;
  readonly tipThickness: number | undefined;
  readonly edge: number;
  readonly bevelHeight: number | undefined;
  readonly curve: number | undefined;
  /** Flat of a hexagonal section, rib of a T-back. */
  readonly flatWidth: number | undefined;
  readonly ribHeight: number | undefined;
  /** Degrees a side. */
  readonly edgeAngle: number | undefined;
}

/** Heat treatment of a line. */
export interface PlannedHeat {
  /** HRC; the aim of the use's band where left out. */
  readonly target: number | undefined;
  readonly quench: QuenchMedium | undefined;
  /** °C; the usual one of the steel where left out. */
  readonly hardenC: number | undefined;
  /** Thickest place when it is hardened, mm; the blade's thickness where left out. */
  readonly sectionMm: number | undefined;
  /** Temper that the smith chose, °C; worked out for the target where left out. */
  readonly chosenC: TypedTemper | undefined;
  readonly temperHours: number;
  readonly temperCycles: number;
  readonly knownC: number | undefined;
  readonly knownHrc: number | undefined;
  /** Coldest temperature straight from the quench, °C. */
  readonly quenchToC: number;
  readonly subZeroHours: number | undefined;
  /** Thickness of the clay and where it begins above the edge, mm. */
  readonly clayMm: number | undefined;
  readonly clayFromMm: number | undefined;
  /** In the smith's words; worked out where left out. */
  readonly recipe: string | undefined;
  /** Mass of one piece when it is hardened, g; the blank's where left out. */
  readonly hardenMass: number | undefined;
  readonly piecesALoad: number | undefined;
  /** kg */
  readonly massALoad: number | undefined;
  readonly efficiency: number;
  /** kWh a load for holding and tempering, on top of heating up. */
  readonly holdEnergy: number | undefined;
  /** kWh a load as metered, everything in it. */
  readonly meteredEnergy: number | undefined;
  /** Hours that one load keeps the ovens. */
  readonly ovenHours: number | undefined;
}

/** Bars of a line. Lengths in mm. */
interface PlannedStock {
  /** What is cut from the bar for one piece; the blade's own size where left out. */
  readonly blankLength: number | undefined;
  readonly blankWidth: number | undefined;
  readonly blankThickness: number | undefined;
  readonly barLength: number | undefined;
  /** Finished volume of a forged blade with its tang, mm³: its blank may be shorter than it. */
  readonly forgedVolume: number | undefined;
  readonly kerf: number;
  readonly trim: number;
}

/** Money and hours of a line, money in one currency. */
interface PlannedCost {
  readonly priceKg: number | undefined;
  /** Day number of a spreadsheet. */
  readonly priceDate: number | undefined;
  readonly hoursFirst: number | undefined;
  readonly rate: number;
  readonly model: LearningModel | undefined;
  /** Once a line, h. */
  readonly setUpHours: number;
  readonly hourRate: number | undefined;
  readonly overheadRate: number;
  readonly costAStart: number;
  readonly costAGoodOne: number;
  readonly energyPrice: number | undefined;
  /** Charge of an outside heat treater for the line. */
  readonly outsideHeat: number | undefined;
  /** Share of the price. */
  readonly margin: number | undefined;
  readonly price: number | undefined;
  readonly priceStep: number;
}

/** One line of a run, read whole: what is left out stands as `undefined`, or as its usual value. */
export interface ReadLine extends PlannedBlade, PlannedHeat, PlannedStock, PlannedCost {
  readonly name: string;
  readonly good: number;
  /** Share that comes out good. */
  readonly yieldShare: number;
  readonly confidence: number;
}

/** What a line is read as where it says nothing, in the worksheet and in a program. */
export const USUAL_LINE = {
  name: "",
  confidence: USUAL_CONFIDENCE,
  grind: USUAL_GRIND,
  edge: 0,
  temperHours: USUAL_HOURS,
  temperCycles: USUAL_CYCLES,
  quenchToC: ROOM_C,
  /** Of a furnace: common practice, no source. */
  efficiency: 0.25,
  kerf: USUAL_KERF,
  trim: USUAL_TRIM,
  rate: 1,
  setUpHours: 0,
  overheadRate: 0,
  costAStart: 0,
  costAGoodOne: 0,
  priceStep: 0.01,
} as const;

/** What may be given by its name. */
interface NamedOfLine {
  readonly steel: SteelAsked;
  readonly use?: Use | string | undefined;
  readonly grind?: Grind | string | undefined;
  readonly quench?: QuenchMedium | string | undefined;
}

type NeededOfLine = Pick<ReadLine, "good" | "yieldShare">;

/**
 * One line of a run as the smith writes it: steel, good and yield are needed; what else is left out is read as the
 * worksheet reads an empty cell.
 */
export type PlanLine = NamedOfLine &
  NeededOfLine & {
    readonly [K in Exclude<keyof ReadLine, keyof NamedOfLine | keyof NeededOfLine>]?: ReadLine[K] | undefined;
  };

/**
 * A line with its names looked up and its usual values filled in.
 *
 * @throws InvalidValue for what is no line or has no steel; what `findSteel`, `findUse`, `findGrind` and `findQuench`
 * throw for a name.
 */
export function readLine(given: PlanLine): ReadLine {
  if (typeof given !== "object" || given === null) {
    throw new InvalidValue(`line: ${String(given)} given; give an object with steel, good and yieldShare`);
  }
  const line: Record<string, unknown> = { ...given };
  for (const [key, usual] of Object.entries(USUAL_LINE)) line[key] ??= usual;
  const { steel, use, grind = USUAL_GRIND, quench } = given;
  const named = {
    steel: steelAsked(steel),
    use: use && wordAsked(use, findUse),
    grind: wordAsked(grind, findGrind),
    quench: quench && wordAsked(quench, findQuench),
  };
  return { ...line, ...named } as unknown as ReadLine;
}

/** What of a line decides how it is hardened and tempered. */
export type RecipeLine = Pick<
  ReadLine,
  | "use"
  | "steel"
  | "length"
  | "thickness"
  | "target"
  | "quench"
  | "hardenC"
  | "sectionMm"
  | "chosenC"
  | "temperHours"
  | "temperCycles"
  | "knownC"
  | "knownHrc"
  | "quenchToC"
  | "subZeroHours"
  | "clayMm"
  | "clayFromMm"
>;
