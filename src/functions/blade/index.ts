export { ASSESS } from "./assess";
export { BAND } from "./band";
export { USES } from "./uses";
