/** An answer as it was read. */
export interface Reading {
  readonly value: number | string;
  /** As a list shows it. */
  readonly shown: string;
  /** What the price is for, where the answer itself says it. */
  readonly per?: string;
  /** Why it needs a look. */
  readonly doubt?: string;
}
