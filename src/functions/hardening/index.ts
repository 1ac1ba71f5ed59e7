export { CRITICAL } from "./critical";
export { DECARB, GRIND_ALLOWANCE } from "./decarb";
export { DISSOLVED } from "./dissolved";
export { HARDENING } from "./heat-treatment";
export { MAX_SECTION } from "./max-section";
export { QUENCHED_HRC } from "./quenched-hrc";
export { QUENCHES } from "./quenches";
export { RETAINED } from "./retained";
export { SOAK } from "./soak";
