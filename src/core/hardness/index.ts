export { CONVERSION_TABLES, type ConversionTable, findConversionTable } from "./conversion-tables";
export { convertHardness } from "./convert";
export { type HardnessBand, readHardness } from "./read-hardness";
export { findScale, SCALES, type Scale, type ScaleKey } from "./scales";
export { type Strength, strengthOf, yieldStrength } from "./strength";
