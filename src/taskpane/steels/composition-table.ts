import { findSteel } from "../../core/steel/find";
import type { Grade } from "../../core/steel/steel";
import { ask, cellText } from "../parts/ask";
import { element } from "../parts/dom";
import { refusalNote, table } from "../parts/tables";

const TYPICAL =
  "Typical is the figure that the estimates use: carbon as the name says it, else the middle of the range; a maximum alone counts as 0, for silicon and manganese as half of it.";

/** How sure the limits of one element are. */
export function limitsSeen(grade: Grade | null, symbol: string, hasLimits: boolean): string {
  if (grade === null) return "as given";
  if (!hasLimits) return "no limit; assumed";
  const recalled: readonly string[] = grade.recalled;
  if (grade.status === "read") return recalled.includes(symbol) ? "recalled" : "read";
  return grade.status;
}

/** Limits of a steel, the figures that estimates use, and how sure each line is. */
export function compositionTable(name: string): HTMLElement {
  const { rows, refusal } = ask("COMPOSITION", name);
  if (refusal !== null) return refusalNote(refusal);
  const { grade } = findSteel(name);
  const figures = rows.map((row) => {
    const [symbol = "", low = "", high = "", typical = ""] = row.map(cellText);
    const seen = limitsSeen(grade, symbol, low !== "" || high !== "");
    return [symbol, ...[low, high, typical].map((figure) => figure || "–"), seen];
  });
  const headings = [
    { text: "element" },
    { text: "low", isFigure: true },
    { text: "high", isFigure: true },
    { text: "typical", isFigure: true },
    { text: "limits" },
  ];
  return element(
    "div",
    {},
    table("Composition in mass %, heat analysis", headings, figures),
    element("p", { class: "basis" }, TYPICAL),
  );
}
