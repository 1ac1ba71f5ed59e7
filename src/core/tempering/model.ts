import type { Relation } from "../relation";
import type { Steel } from "../steel/steel";
import type { HardnessCurve } from "./curve";

/** Hardness after temper of one steel, ready to be asked many times. */
export interface TemperModel {
  readonly steel: Steel;
  readonly curve: HardnessCurve;
  /** Coolest and hottest temper, °C. */
  readonly minC: number;
  readonly maxC: number;
  /** Shortest and longest time in all, h. */
  readonly minHours: number;
  readonly maxHours: number;
  /** Half-width of the band that covers 90 %, HRC. */
  halfWidthAt(celsius: number, parameter: number): number;
  /** Where the figure comes from, in words. */
  basisAt(parameter: number): string;
  /** What the answer takes for granted beyond a section that hardened through. */
  readonly assumptions: readonly string[];
  readonly relations: readonly Relation[];
}
