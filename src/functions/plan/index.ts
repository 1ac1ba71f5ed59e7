export { COST_RANGE } from "./cost-range";
export { HISTORY } from "./history";
export { PRICE_BREAKS } from "./price-breaks";
export { RECIPE } from "./recipe";
export { RUN_HEADINGS } from "./run-headings";
export { RUN_PLAN } from "./run-plan";
export { RUN_TOTALS } from "./run-totals";
