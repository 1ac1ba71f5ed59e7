import { attempt, Refusal } from "../../core/refusal";
import { findSteel } from "../../core/steel/find";
import { functionNamed } from "../../functions/catalogue";
import type { PageContext, RenderPage } from "../page";
import { ask, cellText, list } from "../parts/ask";
import { afterPause, element, fill } from "../parts/dom";
import { evidenceOf } from "../parts/evidence";
import { button, searchField } from "../parts/fields";
import { printButton } from "../parts/print";
import { figureReading } from "../parts/reading";
import { tableInsert } from "../parts/table-insert";
import { facts, refusalNote } from "../parts/tables";
import { temperTable } from "../tempering/temper-table";
import { compositionTable } from "./composition-table";
import { heatForm } from "./heat-form";

const SHOWN = 12;

const HINT = "Grade, UNS or EN number, or an analysis in mass %: C 0.95 Mn 0.40 Si 0.22";

/** Steels: search by name; composition, a heat held against it, hardness after temper and where each figure comes from. */
export const render: RenderPage = (root, context) => {
  const search = searchField({ label: "Find a steel", hint: HINT, line: "steel" });
  const count = element("p", { class: "count", role: "status" });
  const matches = element("ul", { class: "matches" });
  const shown = element("section", { "aria-label": "The steel" });
  const heat = heatForm(context);
  const hardness = element("div", {});
  const choose = (name: string) => {
    context.state.steel = name;
    const problem = isKnown(name) ? null : ask("STEEL", name).refusal;
    fill(shown, ...(problem === null ? steelDetails(name) : [refusalNote(problem)]));
    fill(hardness, ...(problem === null ? hardnessDetails(name) : []));
    heat.hold(name);
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
  root.append(count, matches, shown, heat.block, hardness, printButton("Print this grade sheet"));
  const tables = tableInsert(context.port, () => ({ steel: context.state.steel, hours: "", cycles: "" }));
  if (tables !== null) hardness.after(tables);
  choose(context.state.steel);
  return undefined;
};

function isKnown(name: string): boolean {
  return !(attempt(() => findSteel(name)) instanceof Refusal);
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
  return [
    element("h3", {}, findSteel(name).name),
    steelFacts(name),
    compositionTable(name),
    evidenceOf({ functionName: "COMPOSITION", steel: name }, "Where the composition comes from"),
  ];
}

function hardnessDetails(name: string): HTMLElement[] {
  return [
    element("h3", {}, "Hardness after temper"),
    temperTable(name),
    evidenceOf({ functionName: "TEMPERED_RANGE", steel: name }, "Where the hardness comes from"),
  ];
}

/** Everything STEEL says except the limits, which the composition table shows in full. */
function steelFacts(name: string): HTMLElement {
  const fn = functionNamed("STEEL");
  const columns = fn === undefined || fn.shape === "scalar" ? [] : fn.result;
  const [cells = []] = ask("STEEL", name).rows;
  const pairs = columns.map(({ label, unit }, at): [string, string] => {
    return [label, figureReading(cellText(cells[at] ?? null), unit)];
  });
  return facts(
    pairs.filter((_, at) => columns[at]?.unit !== "mass %" && columns[at]?.label !== "designation"),
  );
}
