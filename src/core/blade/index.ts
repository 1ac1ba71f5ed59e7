export { findUse, USES, usesContaining } from "./bands";
export type { BladeQuestion, BladeStory } from "./question";
export { isStainless } from "./steel-kind";
export { bladeStory } from "./story";
