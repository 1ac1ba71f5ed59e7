import type { QuenchMedium } from "../hardening/quench-media";
import type { Steel } from "../steel/steel";
import type { Traits } from "../steel/traits";
import type { Use } from "./bands";
import type { BladeStatus } from "./status";
import type { Suitability } from "./suitability";

/** A steel that may be chosen, with what it costs. */
export interface OfferedSteel {
  readonly steel: Steel;
  /** Of a kilogram, in the sheet's own currency [money a kg]. */
  readonly price?: number | undefined;
}

/** What a steel is wanted for and what the shop can do. What is left out is not judged. */
export interface ChoiceQuestion {
  readonly use: Use;
  /** Thickest place that has to harden, above 0 [mm]. */
  readonly thickness?: number | undefined;
  /** Medium of the quench. */
  readonly quench?: QuenchMedium | undefined;
  /** Of the blade, above 0 [mm]. */
  readonly length?: number | undefined;
  /** True: it must be stainless; false: it must not. */
  readonly stainless?: boolean | undefined;
  /** False: the shop has no kiln. */
  readonly kiln?: boolean | undefined;
  /** True: the steels are those of a list that was given, so that all can be had. */
  readonly isOffered?: boolean | undefined;
}

/** The same as a program may ask it: use and quench by themselves or by a word for them. */
export type ChoiceAsked = Omit<ChoiceQuestion, "use" | "quench"> & {
  /** Use, or a word for it. */
  readonly use: Use | string;
  /** Medium of the quench, or a word for it. */
  readonly quench?: QuenchMedium | string | undefined;
};

/** A steel as it stands in the list. */
export interface Choice {
  readonly steel: Steel;
  /** Its own name first, then those of its twins. */
  readonly names: readonly string[];
  /** How the blade stands against the band of the use; "ruled out" where something bars the steel. */
  readonly status: BladeStatus | "ruled out";
  /** What bars it: 0 nothing, then one of `BARS` by its place, the most easily mended first [-]. */
  readonly barred: number;
  /** Temper with the best chance of the band [°C]; undefined where there is none. */
  readonly temperC: number | undefined;
  /** Hardness expected after it [HRC]. */
  readonly likely: number | undefined;
  /** That a reading lies in the band, 0 to 1 [-]. */
  readonly chance: number | undefined;
  /** Thickness that hardens through in the quench [mm]; undefined where none can be said. */
  readonly hardensMm: number | undefined;
  readonly traits: Traits;
  /** Of a kilogram, in the sheet's own currency [money a kg]. */
  readonly price: number | undefined;
  /** How well what the steel is like meets what the use asks. */
  readonly suits: Suitability;
  /** Named for the use by those who write of it. */
  readonly isNamed: boolean;
  /** Sold widely for blades. */
  readonly isSold: boolean;
  /** Reasons for its place in the list, in words. */
  readonly why: string;
  /** What one does without by taking it, in words. */
  readonly givesUp: string;
}
