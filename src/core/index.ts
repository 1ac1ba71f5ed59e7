/**
 * The public face of the library: one line a topic. What a topic shows stands in its own index; the files of core
 * import one another directly.
 */
export * from "./blade";
export { DATA_EDITION } from "./edition";
export * from "./hardening";
export * from "./hardness";
export * from "./inspection";
export * from "./mechanics";
export * from "./money";
export { attempt, attemptOr, InvalidValue, NotAvailable, Refusal } from "./refusal";
export type { Evidence, ExpectedError, Inputs, Limit, Relation } from "./relation";
export * from "./run";
export * from "./shape";
export type { SourceKey } from "./sources";
export * from "./steel";
export * from "./stock";
export * from "./tempering";
export type { Worded } from "./word-list";
