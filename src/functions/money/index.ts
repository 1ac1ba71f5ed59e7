export { COST_RANGE } from "./cost-range";
export { PRICE_BREAKS } from "./price-breaks";
export { LOT_COST, OUTSIDE_CHARGE, PRICE_AT_MARGIN, PRICE_AT_MARKUP } from "./prices";
export { ROUND_MONEY } from "./round-money";
