export { ASSEMBLY } from "./assembly";
export { EDGE_ANGLE, EDGE_BEVEL, GRIND_ANGLE } from "./edge";
export { FULLERED_AREA } from "./fullered-area";
export { EFFECTIVE_MASS, PERCUSSION_CENTRE } from "./percussion";
export { POMMEL } from "./pommel";
export { SET_RADIUS } from "./set-radius";
export { SWING_INERTIA } from "./swing-inertia";
export { FULLER_WIDTH, HOLLOW_DEPTH, WHEEL } from "./wheel";
