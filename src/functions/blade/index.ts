export { ASSESS } from "./assess";
export { BAND } from "./band";
export { BAND_TEMPER } from "./band-temper";
export { STEELS_FOR } from "./steels-for";
export { USES } from "./uses";
