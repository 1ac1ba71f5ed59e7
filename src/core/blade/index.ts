export { assess } from "./assess";
export { findUse, USES, usesContaining } from "./bands";
export { isStainless } from "./steel-kind";
