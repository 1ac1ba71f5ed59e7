import type { Bounds, Element } from "./composition";

/** Limits of the elements that a grade specifies. */
export type Limits = Readonly<Partial<Record<Element, Bounds>>>;

function boundsFrom(printed: string): Bounds {
  if (printed.startsWith("≤")) return { low: null, high: Number(printed.slice(1)) };
  if (printed.startsWith("≥")) return { low: Number(printed.slice(1)), high: null };
  const [low = "", high = ""] = printed.split("-");
  return { low: Number(low), high: Number(high) };
}

/** Reads limits as the grade table prints them: "C 0.90-1.03 P ≤0.040". */
export function limitsFrom(printed: string): Limits {
  const limits: Partial<Record<Element, Bounds>> = {};
  const words = printed.split(" ");
  for (let at = 0; at + 1 < words.length; at += 2) {
    limits[words[at] as Element] = boundsFrom(words[at + 1] as string);
  }
  return limits;
}

/** Limits in words, without a unit: "0.90 to 1.03", "at most 0.08", "at least 0.15". */
export function boundsText({ low, high }: Bounds): string {
  if (low !== null && high !== null) return `${low.toFixed(2)} to ${high.toFixed(2)}`;
  if (high !== null) return `at most ${high.toFixed(2)}`;
  return low === null ? "no limits" : `at least ${low.toFixed(2)}`;
}
