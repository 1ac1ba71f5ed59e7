export { type Blade, type BladeAt, type BladeSection, bladeAt, bladeOf } from "./beam";
export type { SectionProperties } from "./cross-section";
export { type Edge, type EdgeLoad, edgeForLoad, edgeLoad } from "./edge-load";
export { type Bend, type BentPoint, type HeldBlade, heldBlade } from "./flex";
export type { Fitting } from "./free-blade";
export { type Ring, ring } from "./ring";
export { type FlexThickness, thicknessForFlex } from "./thickness-for-flex";
export { type YieldBand, yieldBand } from "./yield";
