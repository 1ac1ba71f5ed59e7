export { findUse, USES, usesContaining } from "./bands";
export { isStainless } from "./steel-kind";
export { type BladeQuestion, type BladeStory, bladeStory } from "./story";
