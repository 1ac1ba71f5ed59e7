/** One element that a name speaks of. */
export interface Part {
  /** Its symbol. */
  readonly element: string;
  /** Nominal content [mass %]; null where the name gives the element but no amount. */
  readonly content: number | null;
  /** What in the name says so. */
  readonly says: string;
  /** True where the name has no figure and only its kind tells the content. */
  readonly isAbout?: boolean;
}

/** Content without the dust of binary arithmetic. */
export function content(value: number): number {
  return Number(value.toFixed(5));
}

/** An element of the name whose amount is not in it. */
export function unstated(element: string, says: string): Part {
  return { element, content: null, says: `${says}, no amount in the name` };
}
