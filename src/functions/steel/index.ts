export { ANALYSIS } from "./analysis";
export { CARBON } from "./carbon";
export { COMPOSITION } from "./composition";
export { DENSITY } from "./density";
export { STEEL } from "./steel-row";
export { STEELS } from "./steels";
