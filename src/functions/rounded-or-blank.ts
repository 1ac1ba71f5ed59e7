/** A figure rounded to a whole number; an empty cell where there is none. */
export function roundedOrBlank(value: number | null): number | "" {
  return value === null ? "" : Math.round(value);
}
