export { acceptChance } from "./accept-chance";
export { type ReadingSummary, summariseReadings } from "./readings";
export { findLevel, INSPECTION_LEVELS, type SamplePlan, samplePlan } from "./sample-plan";
export { findThicknessRule, THICKNESS_RULES, type ThicknessRule, testThickness } from "./test-thickness";
