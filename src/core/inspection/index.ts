export { acceptChance } from "./accept-chance";
export { summariseReadings } from "./readings";
export { findLevel, INSPECTION_LEVELS, samplePlan } from "./sample-plan";
export { findThicknessRule, THICKNESS_RULES, testThickness } from "./test-thickness";
