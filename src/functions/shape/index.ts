export { GRINDS } from "./grinds";
export { MASS } from "./mass";
export { SECTION_AREA } from "./section-area";
export { STATIONS } from "./stations";
