import { numberText } from "../quantity-text";
import type { ReadLine } from "./line";

/** What is to be said about an edge angle a side; empty where it is usual or not given. */
export function edgeCaution({ use, edgeAngle }: Pick<ReadLine, "use" | "edgeAngle">): string {
  if (use === undefined || edgeAngle === undefined) return "";
  const { angleLow, angleHigh, word } = use;
  if (angleLow === null || angleHigh === null) return "";
  if (edgeAngle >= angleLow && edgeAngle <= angleHigh) return "";
  const half = edgeAngle / 2;
  const question =
    half >= angleLow && half <= angleHigh
      ? ` Was the included angle typed? Half of it, ${numberText(half)}°, would be usual.`
      : "";
  return (
    `Edge ${numberText(edgeAngle)}° a side is outside the usual ${numberText(angleLow)} to ${numberText(angleHigh)}° ` +
    `a side for "${word}".${question}`
  );
}
