export type { BarSection } from "./bar-section";
export {
  type BestOffer,
  bestOffer,
  type ComparedItem,
  type Comparison,
  compareOffers,
  type OfferRequest,
  type SupplierOrder,
} from "./best-offer";
export type { BarOffer, CutRequest, PieceLine } from "./cut-order";
export { type CutPieces, type CutPlan, type CutRow, cutPlan } from "./cut-plan";
export { type Forging, forgeLength, type LossRule } from "./forge-length";
export { type GaugeFamily, gaugeThickness } from "./gauges";
export { inchFraction } from "./inch-fraction";
export type { BoughtBars, ItemOffer } from "./item-offer";
export type { NeedItem, NeedLine, OfferLine, PriceUnit, Supplier } from "./offers";
export { type BlankLine, type OrderLine, steelOrder } from "./steel-order";
