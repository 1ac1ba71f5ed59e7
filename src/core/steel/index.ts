export { parseAnalysis } from "./analysis";
export type { SteelAsked } from "./asked";
export { billetCarbon, carbonDiffusivity, minutesToEvenOut } from "./billet";
export { boundsOf } from "./bounds";
export { carbonBounds, carbonOf } from "./carbon";
export {
  type AnalysisKind,
  type CertificateLine,
  type CertificateReport,
  certificate,
  type Result,
  type Status,
} from "./certificate";
export { type Cladding, type CladEdge, cladEdge } from "./cladding";
export { type Bounds, type Composition, ELEMENTS, type Element } from "./composition";
export { type Decoded, decodeName } from "./decode/decode-name";
export type { Part as DecodedPart } from "./decode/part";
export { type Density, densityOf } from "./density";
export { findSteel } from "./find";
export { familiesNamed, type GradeFilter, listGrades, systemsNamed } from "./list";
export type { Ratings } from "./ratings";
export { type SimilarGrade, similarGrades } from "./similar-grades";
export { type Stainless, stainless } from "./stainless";
export { FAMILIES, type Family, type Grade, type Steel, SYSTEMS, type System } from "./steel";
export { toughnessAt } from "./toughness";
export { type RustWord, type ShopNeed, steelTraits, type Traits } from "./traits";
