export { bladeAt, bladeOf } from "./beam";
export { edgeForLoad, edgeLoad } from "./edge-load";
export { heldBlade } from "./flex";
export { ring } from "./ring";
export { thicknessForFlex } from "./thickness-for-flex";
export { yieldBand } from "./yield";
