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
  /** Decides the band of hardness; none is looked at where left out. */
  readonly use: Use | undefined;
  /** Grade or analysis. */
  readonly steel: Steel;
  /** Heel to tip [mm]. */
  readonly length: number | undefined;
  /** Spine to edge, or edge to edge, at the heel [mm]. */
  readonly width: number | undefined;
  /** At the spine, or in the middle of a double-edged blade [mm]. */
  readonly thickness: number | undefined;
  /** Cross section. */
  readonly grind: Grind;
  /** Width at the tip; that of the heel where left out [mm]. */
  readonly tipWidth: number | undefined;
  /** Thickness at the tip; that of the heel where left out [mm]. */
  readonly tipThickness: number | undefined;
  /** Thickness behind the edge; 0 where it is ground to nothing [mm]. */
  readonly edge: number;
  /** Height of the bevel from the edge, across the width [mm]. */
  readonly bevelHeight: number | undefined;
  /** Hollow: radius of the wheel. Convex: bulge over a straight bevel [mm]. */
  readonly curve: number | undefined;
  /** Flat of a hexagonal section, or rib of a T-back [mm]. */
  readonly flatWidth: number | undefined;
  /** Height of the rib of a T-back [mm]. */
  readonly ribHeight: number | undefined;
  /** A side [°]. */
  readonly edgeAngle: number | undefined;
}

/** Heat treatment of a line. */
export interface PlannedHeat {
  /** Hardness wanted; the aim of the use's band where left out [HRC]. */
  readonly target: number | undefined;
  /** Medium of the quench. */
  readonly quench: QuenchMedium | undefined;
  /** Hardening temperature; the usual one of the steel where left out [°C]. */
  readonly hardenC: number | undefined;
  /** Thickest place when it is hardened; the blade's thickness where left out [mm]. */
  readonly sectionMm: number | undefined;
  /** Temper that the smith chose; worked out for the target where left out [°C]. */
  readonly chosenC: TypedTemper | undefined;
  /** Time of each temper [h]. */
  readonly temperHours: number;
  /** Number of equal tempers [-]. */
  readonly temperCycles: number;
  /** Temper that a blade of this batch already had [°C]. */
  readonly knownC: number | undefined;
  /** What that blade read after it [HRC]. */
  readonly knownHrc: number | undefined;
  /** Coldest temperature straight from the quench [°C]. */
  readonly quenchToC: number;
  /** Time at it; no sub-zero treatment where left out [h]. */
  readonly subZeroHours: number | undefined;
  /** Thickness of the clay; none where left out [mm]. */
  readonly clayMm: number | undefined;
  /** Where the clay begins above the edge [mm]. */
  readonly clayFromMm: number | undefined;
  /** In the smith's words; worked out where left out. */
  readonly recipe: string | undefined;
  /** Mass of one piece when it is hardened; the blank's where left out [g]. */
  readonly hardenMass: number | undefined;
  /** Most pieces that one furnace load takes [-]. */
  readonly piecesALoad: number | undefined;
  /** Most mass that one furnace load takes [kg]. */
  readonly massALoad: number | undefined;
  /** Share of the furnace's energy that goes into the load, above 0 to 1 [-]. */
  readonly efficiency: number;
  /** For holding and tempering a load, on top of heating it up [kWh]. */
  readonly holdEnergy: number | undefined;
  /** Of a load as metered, everything in it [kWh]. */
  readonly meteredEnergy: number | undefined;
  /** How long one load keeps the ovens [h]. */
  readonly ovenHours: number | undefined;
}

/** Bars of a line. Lengths in mm. */
interface PlannedStock {
  /** What is cut from the bar for one piece; the blade's own size where left out [mm]. */
  readonly blankLength: number | undefined;
  /** Of the blank; the blade's where left out [mm]. */
  readonly blankWidth: number | undefined;
  /** Of the blank; the blade's where left out [mm]. */
  readonly blankThickness: number | undefined;
  /** As bought [mm]. */
  readonly barLength: number | undefined;
  /** Finished volume of a forged blade with its tang: its blank may be shorter than it [mm³]. */
  readonly forgedVolume: number | undefined;
  /** Lost at each cut [mm]. */
  readonly kerf: number;
  /** Cut off each bar before the first piece, both ends together [mm]. */
  readonly trim: number;
}

/** Money and hours of a line, money in one currency. */
interface PlannedCost {
  /** Price of the steel [money a kg]. */
  readonly priceKg: number | undefined;
  /** Day of that price, as a spreadsheet numbers days [d]. */
  readonly priceDate: number | undefined;
  /** Work on the first piece [h]. */
  readonly hoursFirst: number | undefined;
  /** Learning rate: share of the hours after each doubling, above 0 to 1 [-]. */
  readonly rate: number;
  /** How the rate is counted. */
  readonly model: LearningModel | undefined;
  /** Once a line [h]. */
  readonly setUpHours: number;
  /** Cost of an hour of work [money]. */
  readonly hourRate: number | undefined;
  /** Overhead on an hour of work [money]. */
  readonly overheadRate: number;
  /** Further cost of each blade started [money]. */
  readonly costAStart: number;
  /** Further cost of each good blade [money]. */
  readonly costAGoodOne: number;
  /** Price of energy [money a kWh]. */
  readonly energyPrice: number | undefined;
  /** Charge of an outside heat treater for the line [money]. */
  readonly outsideHeat: number | undefined;
  /** Share of the price, 0 to below 1 [-]. */
  readonly margin: number | undefined;
  /** Price of a blade; worked out from the margin where left out [money]. */
  readonly price: number | undefined;
  /** Step that prices are rounded to [money]. */
  readonly priceStep: number;
}

/** One line of a run, read whole: what is left out stands as `undefined`, or as its usual value. */
export interface ReadLine extends PlannedBlade, PlannedHeat, PlannedStock, PlannedCost {
  /** As the smith calls the line. */
  readonly name: string;
  /** Good blades wanted, a whole number of 1 and more [-]. */
  readonly good: number;
  /** Share that comes out good, above 0 to 1 [-]. */
  readonly yieldShare: number;
  /** Chance wanted of enough good blades, above 0 to below 1 [-]. */
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
  /** Grade, its designation, or the text of an analysis. */
  readonly steel: SteelAsked;
  /** Decides the band of hardness; none is looked at where left out. */
  readonly use?: Use | string | undefined;
  /** Cross section; flat where left out. */
  readonly grind?: Grind | string | undefined;
  /** Medium of the quench. */
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
