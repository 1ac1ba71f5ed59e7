export { BLADE_AT } from "./blade-at";
export { EDGE_FOR_LOAD, EDGE_LOAD } from "./edge-load";
export { FLEX } from "./flex";
export { RING } from "./ring";
export { THICKNESS_FOR_FLEX } from "./thickness-for-flex";
