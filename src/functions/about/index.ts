export { VERSION } from "./version";
