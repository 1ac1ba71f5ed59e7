import type { Hardening } from "../hardening/hardens";
import type { QuenchMedium } from "../hardening/quench-media";
import type { NotAvailable } from "../refusal";
import type { SteelAsked } from "../steel/asked";
import type { Steel } from "../steel/steel";
import type { TemperReach } from "../tempering/reach";
import type { TemperPlan } from "../tempering/temper-plan";
import type { Treatment } from "../tempering/tempered";
import type { BandTemper } from "./band-temper";
import type { Use } from "./bands";
import type { Caution } from "./caution";
import type { HardnessEstimate } from "./chance";
import type { BladeStatus } from "./status";

/** All that may be known of a blade. What is left out is not judged and leaves its part open. */
export interface BladeQuestion {
  readonly steel: Steel;
  /** Decides the band of hardness. */
  readonly use?: Use | undefined;
  /** Of the blade, above 0 [mm]. */
  readonly length?: number | undefined;
  /** Thickest place that has to harden, above 0 [mm]. */
  readonly thickness?: number | undefined;
  /** Medium of the quench. */
  readonly quench?: QuenchMedium | undefined;
  /** Times, cycles and readings of the temper. */
  readonly treatment: Treatment;
  /** What the blade reads or is expected to read, both ends equal for one figure [HRC]. */
  readonly reading?: { readonly low: number; readonly high: number } | undefined;
  /** Temper that the blade had or is to have [°C]. */
  readonly temperC?: number | undefined;
  /** Whether its unit was written beside it: a bare figure may be meant as °F. */
  readonly temperHasUnit?: boolean | undefined;
  /** Hardness wanted [HRC]; without one the temper with the best chance of the band is taken. */
  readonly target?: number | undefined;
  /** Judge what is given and nothing else: no temper is chosen for a blade that was neither read nor tempered. */
  readonly asIs?: boolean | undefined;
}

/** The same as a program may ask it: steel, use and quench by themselves or by a name for them. */
export type BladeAsked = Omit<BladeQuestion, "steel" | "use" | "quench" | "treatment"> & {
  /** Grade, its designation, or the text of an analysis. */
  readonly steel: SteelAsked;
  /** Use, or a word for it. */
  readonly use?: Use | string | undefined;
  /** Medium of the quench, or a word for it. */
  readonly quench?: QuenchMedium | string | undefined;
  /** Times, cycles and readings of the temper; the usual ones where left out. */
  readonly treatment?: Treatment | undefined;
};

/** What there is to say of a blade. Every function and sheet that judges one reads this and nothing else. */
export interface BladeStory {
  /** Whether the blade hardens, and how deep. */
  readonly hardening: Hardening;
  /** Straight from the quench, hardened through [HRC]. */
  readonly asQuenched: number | undefined;
  /** Hardness that the usual tempers give. */
  readonly reach: TemperReach | undefined;
  /** Given, that of the target, or the best for the band [°C]. */
  readonly temperC: number | undefined;
  /** Of the reading, or as expected after the temper [HRC]. */
  readonly estimate: HardnessEstimate | undefined;
  /** Where an expected hardness comes from, in words. */
  readonly basis: string;
  /** What an expected hardness takes for granted: section, hardening, what the analysis lacks. */
  readonly taken: string;
  /** How a target is come by; undefined without one. */
  readonly plan: TemperPlan | undefined;
  /** Why there is no temper or no hardness. */
  readonly missing: NotAvailable | undefined;
  /** That a careful reading lies in the band, 0 to 1 [-]; undefined without a use or a hardness. */
  readonly chance: number | undefined;
  /** Empty without a use. */
  readonly status: BladeStatus | "";
  /** The temper with the best chance of the band, where one is known. */
  readonly best: BandTemper | undefined;
  /** Whether the temper was chosen here for the band, no target being given. */
  readonly isForBand: boolean;
  /** What to be wary of, the weightiest first. */
  readonly cautions: readonly Caution[];
  /** What to do next, one sentence. */
  readonly next: string;
}
