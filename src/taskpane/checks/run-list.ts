import { element } from "../parts/dom";
import { figureReading } from "../parts/reading";
import { caution, disclosure, facts, refusalNote, table } from "../parts/tables";
import type { LineReport, RunReport } from "./run-report";

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

function stateOf({ fault, cautions }: LineReport): "not planned" | "with cautions" | "clear" {
  if (fault !== null) return "not planned";
  return cautions === "" ? "clear" : "with cautions";
}

function summary(lines: readonly LineReport[]): string {
  const parts = (["not planned", "with cautions", "clear"] as const).map((state) => {
    const count = lines.filter((line) => stateOf(line) === state).length;
    return count === 0 ? "" : `${count} ${state}`;
  });
  return `${counted(lines.length, "line", "lines")}: ${parts.filter((part) => part !== "").join(", ")}`;
}

function lineBlock(line: LineReport): HTMLElement {
  const { name, fault, cautions, figures } = line;
  const pairs = figures.map(([{ label, unit }, text]): [string, string] => [
    // The unit behind the figure: °C and °F are two columns of the sheet and one fact here.
    label.replace(/ (?:%|g|C)$/, ""),
    figureReading(text, unit === "money" ? "" : unit),
  ]);
  return element(
    "section",
    { class: "line" },
    element("h4", {}, `${name}: ${stateOf(line)}`),
    fault === null ? null : refusalNote(fault),
    cautions === "" ? null : caution(cautions),
    fault === null
      ? disclosure("Figures", () => [facts(pairs.filter(([label]) => label !== "temper F"))])
      : null,
  );
}

function totalsTable(totals: RunReport["totals"]): HTMLElement {
  const headings = [{ text: "what" }, { text: "figure", isFigure: true }, { text: "unit" }, { text: "note" }];
  const rows = totals.map(([what = "", figure = "", unit = "", remark = ""]) => [what, figure, unit, remark]);
  return table("Totals of the run; money in the currency of your table", headings, rows);
}

/** What is wrong, what to be wary of, and the sums: lines that are not planned first, then the order of the table. */
export function runList({ lines, totals }: RunReport): HTMLElement[] {
  if (lines.length === 0) return [refusalNote("The table has headings and no line below them.")];
  const faulty = lines.filter(({ fault }) => fault !== null);
  const planned = lines.filter(({ fault }) => fault === null);
  return [
    element("p", { class: "verdict", role: "status" }, summary(lines)),
    ...[...faulty, ...planned].map(lineBlock),
    element("h3", {}, "Totals"),
    totalsTable(totals),
  ];
}
