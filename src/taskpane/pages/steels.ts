import { Refusal } from "../../core/refusal";
import { findSteel } from "../../core/steel/find";
import type { Grade } from "../../core/steel/steel";
import { functionNamed } from "../../functions/catalogue";
import { ask, cellText, list } from "../ask";
import { afterPause, element, fill } from "../dom";
import { evidenceOf } from "../evidence";
import { button, searchField } from "../fields";
import type { PageContext, RenderPage } from "../page";
import { facts, refusalNote, table } from "../tables";
import { temperTable } from "../temper-table";

const SHOWN = 12;

const TYPICAL =
  "Typical is the figure that the estimates use: carbon as the name says it, else the middle of the range; a maximum alone counts as 0, for silicon and manganese as half of it.";

const HINT = "Grade, UNS or EN number, or an analysis in mass %: C 0.95 Mn 0.40 Si 0.22";

/** Steels: search by name; composition, hardness after temper and where each figure comes from. */
export const render: RenderPage = (root, context) => {
  const search = searchField({ label: "Find a steel", hint: HINT });
  const count = element("p", { class: "count", role: "status" });
  const matches = element("ul", { class: "matches" });
  const shown = element("section", { "aria-label": "The steel" });
  const choose = (name: string) => {
    context.state.steel = name;
    fill(shown, ...steelDetails(name));
  };
  const pick = (name: string) => {
    search.control.value = name;
    fill(matches);
    fill(count);
    choose(name);
  };
  search.control.value = context.state.steel;
  search.control.addEventListener("focus", () => search.control.select());
  const look = () => lookUp(search.control.value.trim(), { count, matches, choose, pick });
  search.control.addEventListener("input", afterPause(look));
  const take = () => void takeFromCell(context, search.control, look, count);
  root.append(search.block);
  if (context.port.hasSheet) root.append(button("Take it from the selected cell", take));
  root.append(count, matches, shown);
  choose(context.state.steel);
  return undefined;
};

function isKnown(name: string): boolean {
  try {
    findSteel(name);
    return true;
  } catch (problem) {
    if (problem instanceof Refusal) return false;
    throw problem;
  }
}

interface Results {
  readonly count: HTMLElement;
  readonly matches: HTMLElement;
  /** Shows a steel below while the name is still being typed. */
  readonly choose: (name: string) => void;
  /** Takes one of the names offered. */
  readonly pick: (name: string) => void;
}

function lookUp(typed: string, { count, matches, choose, pick }: Results): void {
  fill(matches);
  count.textContent = "";
  if (typed === "") return;
  const known = isKnown(typed);
  const named = list(ask("STEELS", null, null, typed)).filter(
    (name) => !known || name !== findSteel(typed).name,
  );
  if (known) choose(typed);
  count.textContent = countText(named.length, known, typed);
  for (const name of named.slice(0, SHOWN)) {
    matches.append(
      element(
        "li",
        {},
        button(name, () => pick(name)),
      ),
    );
  }
}

function countText(found: number, isKnownName: boolean, typed: string): string {
  if (found === 0) return isKnownName ? "" : (ask("STEEL", typed).refusal ?? "No steel of that name.");
  const other = isKnownName ? "other " : "";
  const more = found > SHOWN ? `; the first ${SHOWN} are shown, type more of the name` : "";
  return `${found} ${other}${found === 1 ? "grade has" : "grades have"} this in the name${more}`;
}

async function takeFromCell(
  { port }: PageContext,
  input: HTMLInputElement,
  look: () => void,
  status: HTMLElement,
): Promise<void> {
  const selected = await port.selection();
  if (selected === null || selected.value.trim() === "") {
    status.textContent = "The selected cell is empty.";
    return;
  }
  input.value = selected.value.trim();
  look();
}

function steelDetails(name: string): (HTMLElement | string)[] {
  const about = ask("STEEL", name);
  if (about.refusal !== null && !isKnown(name)) return [refusalNote(about.refusal)];
  const steel = findSteel(name);
  return [
    element("h3", {}, steel.name),
    steelFacts(name),
    compositionTable(name),
    element("h4", {}, "Hardness after temper"),
    temperTable(name),
    evidenceOf({ functionName: "COMPOSITION", steel: name }, "Where the composition comes from"),
    evidenceOf({ functionName: "TEMPERED_RANGE", steel: name }, "Where the hardness comes from"),
  ];
}

/** Everything STEEL says except the limits, which the composition table shows in full. */
function steelFacts(name: string): HTMLElement {
  const fn = functionNamed("STEEL");
  const columns = fn === undefined || fn.shape === "scalar" ? [] : fn.result;
  const [cells = []] = ask("STEEL", name).rows;
  const pairs = columns.map(({ label, unit }, at): [string, string] => {
    const value = cellText(cells[at] ?? null);
    return [label, unit === "text" || value === "" ? value : `${value} ${unit}`];
  });
  return facts(
    pairs.filter((_, at) => columns[at]?.unit !== "mass %" && columns[at]?.label !== "designation"),
  );
}

/** How sure the limits of one element are. */
function seenText(grade: Grade | null, element: string, hasLimits: boolean): string {
  if (grade === null) return "as given";
  if (!hasLimits) return "no limit; assumed";
  const recalled: readonly string[] = grade.recalled;
  if (grade.status === "read") return recalled.includes(element) ? "recalled" : "read";
  return grade.status;
}

function compositionTable(name: string): HTMLElement {
  const { rows, refusal } = ask("COMPOSITION", name);
  if (refusal !== null) return refusalNote(refusal);
  const { grade } = findSteel(name);
  const figures = rows.map((row) => {
    const [symbol = "", low = "", high = "", typical = ""] = row.map(cellText);
    const seen = seenText(grade, symbol, low !== "" || high !== "");
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
