import { attempt, Refusal } from "../../core/refusal";
import { findSteel } from "../../core/steel/find";
import { FAMILIES } from "../../core/steel/steel";
import { functionNamed } from "../../functions/catalogue";
import type { PageContext, RenderPage } from "../page";
import { ask, cellText, list } from "../parts/ask";
import { afterPause, element, fill } from "../parts/dom";
import { evidenceOf } from "../parts/evidence";
import { button, choiceField, fieldRow, searchField } from "../parts/fields";
import { printButton } from "../parts/print";
import { figureReading } from "../parts/reading";
import { tableInsert } from "../parts/table-insert";
import { disclosure, facts, refusalNote } from "../parts/tables";
import { temperTable } from "../tempering/temper-table";
import { compositionTable } from "./composition-table";
import { heatForm } from "./heat-form";
import { BATHS, nothingFound, type SteelQuestion, steelsFound } from "./steel-search";

const SHOWN = 12;
const ANY = "any";

const HINT = "Grade, UNS or EN number, or an analysis in mass %: C 0.95 Mn 0.40 Si 0.22";

/** Steels: search by name; composition, a heat held against it, hardness after temper and where each figure comes from. */
export const render: RenderPage = (root, context) => {
  const search = searchField({ label: "Find a steel", hint: HINT, line: "steel" });
  const narrowed = {
    family: choiceField({ label: "Family" }, [ANY, ...FAMILIES]),
    use: choiceField({ label: "For use as" }, [ANY, ...list(ask("USES"))]),
    quench: choiceField({ label: "Quench in" }, [ANY, ...BATHS]),
  };
  const count = element("p", { class: "count", role: "status" });
  const matches = element("ul", { class: "matches" });
  const shown = element("section", { "aria-label": "The steel" });
  const heat = heatForm(context);
  const aside = element("div", {});
  const hardness = element("div", {});
  const choose = (name: string) => {
    context.state.steel = name;
    const problem = isKnown(name) ? null : ask("STEEL", name).refusal;
    fill(shown, ...(problem === null ? steelDetails(name) : [refusalNote(problem)]));
    // A steel that is not found must not leave the figures of another one standing.
    aside.hidden = problem !== null;
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
  const chosen = (control: HTMLSelectElement) => (control.value === ANY ? "" : control.value);
  const asked = (): SteelQuestion => ({
    name: search.control.value.trim(),
    family: chosen(narrowed.family.control),
    use: chosen(narrowed.use.control),
    quench: chosen(narrowed.quench.control),
  });
  const look = () => lookUp(asked(), { count, matches, choose, pick });
  search.control.addEventListener("input", afterPause(look));
  for (const { control } of Object.values(narrowed)) {
    control.addEventListener("change", () => {
      // The steel that is shown narrows nothing when one begins to look around.
      if (isKnown(search.control.value)) search.control.value = "";
      look();
    });
  }
  const take = () => void takeFromCell(context, search.control, look, count);
  root.append(search.block);
  if (context.port.hasSheet) root.append(button("Take it from the selected cell", take));
  const more = disclosure("By family, use or quench", () => [
    fieldRow(narrowed.family, narrowed.quench),
    narrowed.use.block,
  ]);
  aside.append(heat.block, hardness, printButton("Print this grade sheet"));
  root.append(more, count, matches, shown, aside);
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

function lookUp(question: SteelQuestion, { count, matches, choose, pick }: Results): void {
  const { name: typed } = question;
  fill(matches);
  count.textContent = "";
  if (Object.values(question).every((part) => part === "")) return;
  const known = typed !== "" && isKnown(typed);
  const named = steelsFound(question).filter((name) => !known || name !== findSteel(typed).name);
  if (typed !== "") choose(typed);
  count.textContent = countText(named.length, known, question);
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

function countText(found: number, isKnownName: boolean, question: SteelQuestion): string {
  if (found === 0) return isKnownName ? "" : nothingFound(question);
  const other = isKnownName ? "other " : "";
  const more = found > SHOWN ? `; the first ${SHOWN} are shown, ask for more at once` : "";
  return `${found} ${other}${found === 1 ? "grade answers" : "grades answer"} to this${more}`;
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
