import { decarbDepth } from "../../src/core/hardening/decarb";
import { usualHardening } from "../../src/core/hardening/hardening-temperature";
import { heatTreatment } from "../../src/core/hardening/heat-treatment";
import { jominyHardness } from "../../src/core/hardening/jominy";
import { QUENCH_MEDIA } from "../../src/core/hardening/quench-media";
import { quenchedHardness } from "../../src/core/hardening/quenched";
import { quenchSection } from "../../src/core/hardening/section-quench";
import { sectionVerdict } from "../../src/core/hardening/section-verdict";
import { attempt, Refusal } from "../../src/core/refusal";
import { findSteel } from "../../src/core/steel/find";
import type { Steel } from "../../src/core/steel/steel";
import { temperedRange } from "../../src/core/tempering/tempered-range";

/**
 * The steels that a smith buys for blades: common practice, no source. Plain carbon bar and strip,
 * spring steels, the tool steels sold as flat stock, and the martensitic stainless grades of kitchen
 * and pocket knives. Twins of a grade of the list are left out: C75S beside 1075, 51CrV4 beside
 * 6150, T10 beside 1095.
 */
export const COMMON_STEELS = [
  ..."1045 1050 1055 1060 1065 1070 1075 1080 1084 1095 C100S 65Mn 60Si2Mn".split(" "),
  ..."5160 6150 9260 4140 4340 52100 L6 15N20 80CrV2 1.2842 1.2419".split(" "),
  ..."O1 O2 O6 O7 A2 A6 D2 D3 W1 W2 S1 S5 S7 H13 M2".split(" "),
  ..."410 420 X30Cr13 X46Cr13 X50CrMoV15 X55CrMo14 X65Cr13 X70CrMo15 X39CrMo17-1".split(" "),
  ..."X30CrMoN15-1 440A 440B 440C".split(" "),
] as const;

/** A blade of 4 mm at the spine and 0.5 mm at the edge. */
const BLADE = {
  widthMm: 30,
  spineMm: 4,
  edgeMm: 0.5,
  clay: 0,
  clayLineMm: 20,
  below: 0,
  transferS: 2,
  bathFactor: 1,
  startC: undefined,
};

/** Usual tempers of blades, and of steels with a secondary peak [°C]. */
const TEMPERS = [200, 560];

/** True where any of several questions is answered. */
function some<T>(list: readonly T[], ask: (item: T) => unknown): boolean {
  return list.some((item) => !(attempt(() => ask(item)) instanceof Refusal));
}

const TREATMENT = { hours: 2, cycles: 1 };

/** What is asked of every steel: the name of the function, and whether it answers. */
export const QUESTIONS: Readonly<Record<string, (steel: Steel) => boolean>> = {
  TEMPERED_RANGE: (steel) => some(TEMPERS, (celsius) => temperedRange(steel, celsius, TREATMENT)),
  QUENCHED_HRC: (steel) => some([steel], () => quenchedHardness(steel)),
  HARDENING: (steel) => some([steel], () => heatTreatment(steel)),
  MAX_SECTION: (steel) => some(QUENCH_MEDIA, (quench) => sectionVerdict(steel, 3, quench)),
  SECTION_QUENCH: (steel) => some(QUENCH_MEDIA, (quench) => quenchSection({ ...BLADE, steel, quench })),
  DECARB: (steel) => some([steel], () => decarbDepth(steel, usualHardening(steel).celsius, 10)),
  JOMINY: (steel) => some([steel], () => jominyHardness(steel, 10)),
};

/** Steels of the list that a function does not answer for; an unknown name counts as unanswered. */
export function unanswered(name: string): string[] {
  const ask = QUESTIONS[name] as (steel: Steel) => boolean;
  return COMMON_STEELS.filter((text) => {
    const steel = attempt(() => findSteel(text));
    return steel instanceof Refusal || !ask(steel);
  });
}
