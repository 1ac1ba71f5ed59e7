export type { Air } from "./air-hardening";
export { type CrackRank, type CrackRisk, crackRisk, type Slenderness } from "./crack-risk";
export { type CriticalPoints, criticalPoints } from "./critical-points";
export { decarbDepth, type GrindAllowance, grindAllowance, scaleLoss } from "./decarb";
export { dissolvedAt } from "./dissolved";
export { type Hardening, hardens, type QuenchQuestion } from "./hardens";
export { type HeatTreatment, heatTreatment, type Span } from "./heat-treatment";
export type { Dissolved } from "./high-chromium";
export { idealDiameter } from "./ideal-diameter";
export { hardenability, jominyHardness } from "./jominy";
export { martensiteStart } from "./martensite";
export { BATHS, type Bath, bathOf, type MaxSection, maxSection } from "./max-section";
export { findQuench, QUENCH_MEDIA, type QuenchKind, type QuenchMedium } from "./quench-media";
export { martensiteHardness, type Quenched, quenchedHardness } from "./quenched";
export { retainedAt } from "./retained";
export { fitSection, type SectionFit } from "./section-fit";
export type { SectionShape } from "./section-grid";
export {
  hardenedDepth,
  quenchSection,
  type SectionBand,
  type SectionInputs,
  type SectionRun,
} from "./section-quench";
export { heatUpMinutes, type Soak, soakMinutes } from "./soak";
