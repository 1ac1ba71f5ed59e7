export { type BandTemper, type BandTemperAsked, bandTemper } from "./band-temper";
export { findUse, type Service, USES, type Use, type UseGroup, usesContaining } from "./bands";
export type { Caution, CautionRank } from "./caution";
export type { HardnessEstimate } from "./chance";
export {
  type Choice,
  type ChoiceAsked,
  type ChoiceQuestion,
  type OfferedSteel,
  steelsFor,
} from "./choice";
export { nothingFits } from "./choice-bars";
export type { BladeAsked, BladeQuestion, BladeStory } from "./question";
export type { BladeStatus } from "./status";
export { isStainless, type SteelKind } from "./steel-kind";
export { bladeStory } from "./story";
export type { Suitability } from "./suitability";
export { type TradeOff, tradeOff } from "./trade-off";
