export { TEMPER_FOR } from "./temper-for";
export { TEMPERED_HRC } from "./tempered-hrc";
export { TEMPERED_RANGE } from "./tempered-range";
