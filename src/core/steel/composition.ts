/** Elements that a grade may limit, in the order in which certificates usually print them. */
export const ELEMENTS = [
  "C",
  "Si",
  "Mn",
  "P",
  "S",
  "Cr",
  "Ni",
  "Mo",
  "V",
  "W",
  "Co",
  "Cu",
  "Al",
  "N",
] as const;

export type Element = (typeof ELEMENTS)[number];

/** Mass % of every element; 0 where nothing is specified or the limit is a residual maximum. */
export type Composition = Readonly<Record<Element, number>>;

/** Mass % limits of one element; `null` is "not specified", never zero. */
export interface Bounds {
  /** Lower limit [mass %]; `null` where none is specified. */
  readonly low: number | null;
  /** Upper limit [mass %]; `null` where none is specified. */
  readonly high: number | null;
}
