export { ACCEPT_CHANCE } from "./accept-chance";
export { HARDNESS } from "./hardness";
export { READ_HARDNESS } from "./read-hardness";
export { READINGS } from "./readings";
export { SAMPLE_PLAN } from "./sample-plan";
export { SCALES } from "./scales";
export { STRENGTH } from "./strength";
export { TEST_THICKNESS } from "./test-thickness";
