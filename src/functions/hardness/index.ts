export { HARDNESS } from "./hardness";
export { READ_HARDNESS } from "./read-hardness";
export { SCALES } from "./scales";
export { STRENGTH } from "./strength";
