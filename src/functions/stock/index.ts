export { CUT_PLAN } from "./cut-plan";
