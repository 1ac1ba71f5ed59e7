export { RUN_HEADINGS } from "./run-headings";
export { RUN_PLAN } from "./run-plan";
