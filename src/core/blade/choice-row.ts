import type { QuenchMedium } from "../hardening/quench-media";
import type { Steel } from "../steel/steel";
import type { Traits } from "../steel/traits";
import type { Use } from "./bands";
import type { BladeStatus } from "./status";
import type { Suitability } from "./suitability";

/** A steel that may be chosen, with what it costs. */
export interface OfferedSteel {
  readonly steel: Steel;
  /** Price a kg in the sheet's own currency. */
  readonly price?: number | undefined;
}

/** What a steel is wanted for and what the shop can do. What is left out is not judged. */
export interface ChoiceQuestion {
  readonly use: Use;
  /** mm */
  readonly thickness?: number | undefined;
  readonly quench?: QuenchMedium | undefined;
  /** mm */
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
  readonly use: Use | string;
  readonly quench?: QuenchMedium | string | undefined;
};

/** A steel as it stands in the list. */
export interface Choice {
  readonly steel: Steel;
  /** Its own name first, then those of its twins. */
  readonly names: readonly string[];
  readonly status: BladeStatus | "ruled out";
  /** What bars it: 0 nothing, `BARS` the most easily mended first. */
  readonly barred: number;
  readonly temperC: number | undefined;
  /** HRC */
  readonly likely: number | undefined;
  readonly chance: number | undefined;
  readonly hardensMm: number | undefined;
  readonly traits: Traits;
  readonly price: number | undefined;
  readonly suits: Suitability;
  readonly isNamed: boolean;
  /** Sold widely for blades. */
  readonly isSold: boolean;
  readonly why: string;
  readonly givesUp: string;
}
