import type { Use } from "../blade/bands";
import type { QuenchMedium } from "../hardening/quench-media";
import type { Refusal } from "../refusal";
import type { Grind } from "../shape/grinds";
import type { Steel } from "../steel/steel";
import type { TypedTemper } from "../tempering/fahrenheit";
import type { LearningModel } from "./learning";

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

/** One line of a run as the smith writes it. */
export interface PlanLine extends PlannedBlade, PlannedHeat, PlannedStock, PlannedCost {
  readonly name: string;
  readonly good: number;
  /** Share that comes out good. */
  readonly yieldShare: number;
  readonly confidence: number;
}

/** What of a line decides how it is hardened and tempered. */
export type RecipeLine = Pick<
  PlanLine,
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
