export { DISSOLVED } from "./dissolved";
export { MAX_SECTION } from "./max-section";
export { QUENCHED_HRC } from "./quenched-hrc";
export { QUENCHES } from "./quenches";
