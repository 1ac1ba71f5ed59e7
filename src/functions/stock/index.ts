export { BEST_OFFER } from "./best-offer";
export { CUT_PLAN } from "./cut-plan";
export { FORGE_LENGTH } from "./forge-length";
export { FRACTION } from "./fraction";
export { LENGTH } from "./length";
export { OFFERS_COMPARED } from "./offers-compared";
export { STEEL_ORDER } from "./steel-order";
