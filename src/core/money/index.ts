export type { PlannedCost } from "./cost";
export { type CostRange, costRange, type UncertainLot } from "./cost-range";
export { type Lot, lotCost, outsideCharge, priceAtMargin, priceAtMarkup } from "./price";
export { type LotTerms, type PriceBreak, priceBreak } from "./price-break";
export { ROUNDING_RULES, type RoundingRule, roundMoney } from "./rounding";
export type { Triangle } from "./triangle";
