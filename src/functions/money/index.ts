export { FURNACE, HEAT_CONTENT } from "./furnace";
export { LEARNING } from "./learning";
export { LOADS } from "./loads";
export { OIL_LITRES, OIL_RISE } from "./oil";
export { LOT_COST, OUTSIDE_CHARGE, PRICE_AT_MARGIN, PRICE_AT_MARKUP } from "./prices";
export { ROUND_MONEY } from "./round-money";
export { CHANCE_OF_ENOUGH, STARTS_BY_PROFIT, YIELD_FLOOR } from "./yields";
