export { costRange } from "./cost-range";
export { lotCost, outsideCharge, priceAtMargin, priceAtMarkup } from "./price";
export { priceBreak } from "./price-break";
export { ROUNDING_RULES, roundMoney } from "./rounding";
