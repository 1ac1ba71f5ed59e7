import { lengthText, quantityText } from "../quantity-text";
import type { CutPlan, CutRow } from "./cut-plan";

/** Drops of a plan that are long enough to go back into the rack. */
function isKept(drop: number, keepFrom: number | undefined): boolean {
  return keepFrom !== undefined && drop >= keepFrom;
}

/** One bar in the words of the saw: "8 × 346 mm + 1 × 120 mm; keep 541.2 mm". */
export function patternText({ pieces, drop }: CutRow, keepFrom: number | undefined): string {
  const cuts = pieces.map(({ length, count }) => `${count} × ${lengthText(length)}`).join(" + ");
  return isKept(drop, keepFrom) ? `${cuts}; keep ${lengthText(drop)}` : cuts;
}

/** Pieces on a bar. */
export function piecesABar({ pieces }: CutRow): number {
  return pieces.reduce((sum, { count }) => sum + count, 0);
}

/** Bar length that ends neither in a piece nor in a kept off-cut: kerfs, trims and short drops, % of all bars. */
export function wastePercent({ rows }: CutPlan, keepFrom: number | undefined): number {
  let bought = 0;
  let used = 0;
  for (const row of rows) {
    const cut = row.pieces.reduce((sum, { length, count }) => sum + length * count, 0);
    const kept = isKept(row.drop, keepFrom) ? row.drop : 0;
    bought += row.bars * row.barLength;
    used += row.bars * (cut + kept);
  }
  return (100 * (bought - used)) / bought;
}

/** How good the plan is known to be. */
export function verdict({ bars, cost, bound, isProved, isStopped }: CutPlan): string {
  if (isProved) return cost === undefined ? "no plan needs fewer bars" : "no plan costs less";
  const gap = cost === undefined ? `${bars - bound} bars` : quantityText(cost - bound, "");
  const limit = isStopped ? "; the search stopped at its work limit" : "";
  return `a better plan is not ruled out: at most ${gap} could be saved${limit}`;
}
