export { ASSESS } from "./assess";
export { BAND } from "./band";
export { BAND_TEMPER } from "./band-temper";
export { USES } from "./uses";
