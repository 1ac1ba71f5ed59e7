export { ACCEPT_CHANCE } from "./accept-chance";
export { READINGS } from "./readings";
export { SAMPLE_PLAN } from "./sample-plan";
export { TEST_THICKNESS } from "./test-thickness";
