export { convertHardness } from "./convert";
export { readHardness } from "./read-hardness";
export { findScale, SCALES } from "./scales";
export { strengthOf, yieldStrength } from "./strength";
