export { ASSESS } from "./assess";
export { BAND } from "./band";
export { BAND_TEMPER } from "./band-temper";
export { STEELS_FOR } from "./steels-for";
export { TRADE_OFF } from "./trade-off";
export { USES } from "./uses";
