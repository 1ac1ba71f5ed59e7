export { bestOffer } from "./best-offer";
export { cutPlan } from "./cut-plan";
export { forgeLength } from "./forge-length";
export { gaugeThickness } from "./gauges";
export { inchFraction } from "./inch-fraction";
export { steelOrder } from "./steel-order";
