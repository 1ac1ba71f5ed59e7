import { catalogue, type ListedFunction, NAMESPACE } from "../../functions/catalogue";
import type { Example, WorksheetFunction } from "../../functions/declare";
import { examplesOf } from "../../functions/examples";
import { parameterHelp, resultText, signature } from "../../functions/metadata";
import { TOPICS } from "../../functions/topics";
import type { PageContext, RenderPage } from "../page";
import { afterPause, element, fill } from "../parts/dom";
import { evidenceOf } from "../parts/evidence";
import { button, searchField } from "../parts/fields";
import { fitsFunction } from "../parts/find-function";
import { formulaOf } from "../parts/formula";
import { insertControl } from "../parts/insert";
import { disclosure, facts } from "../parts/tables";

/** Every worksheet function by topic, with help, examples and a button that puts one into the sheet. */
export const render: RenderPage = (root, context) => {
  const search = searchField({
    label: "Find a function",
    hint: "Part of a name, of what it does, or of what it takes",
  });
  const count = element("p", { class: "count", role: "status" });
  const found = element("div", {});
  const show = () => {
    const fitting = catalogue.filter((fn) => fitsFunction(fn, search.control.value));
    count.textContent =
      fitting.length === catalogue.length
        ? `${catalogue.length} functions`
        : `${fitting.length} of ${catalogue.length} functions${fitting.length === 0 ? ": try one word of it" : ""}`;
    fill(found, ...topics(fitting, context));
  };
  search.control.addEventListener("input", afterPause(show));
  root.append(search.block, count, found);
  show();
  found.querySelector("details[open]")?.scrollIntoView();
  return undefined;
};

function topics(functions: readonly ListedFunction[], context: PageContext): HTMLElement[] {
  return TOPICS.flatMap((topic) => {
    const inTopic = functions.filter((fn) => fn.topic === topic);
    const entries = inTopic.map((fn) => functionEntry(fn, context));
    return entries.length === 0 ? [] : [element("section", {}, element("h3", {}, topic), ...entries)];
  });
}

function functionEntry(fn: WorksheetFunction, context: PageContext): HTMLElement {
  const line = element(
    "span",
    {},
    element("code", {}, fn.name),
    element("span", { class: "basis" }, fn.summary),
  );
  const entry = disclosure(line, () => help(fn, context));
  entry.classList.add("function");
  if (context.state.part.toUpperCase() === fn.name) entry.open = true;
  return entry;
}

function help(fn: WorksheetFunction, context: PageContext): HTMLElement[] {
  const parameters = Object.values(fn.parameters).map((parameter): [string, string] => [
    parameter.label,
    `${parameterHelp(parameter)} Accepted: ${parameter.accepts}.`,
  ]);
  return [
    element("p", {}, element("code", { class: "formula" }, `${NAMESPACE}.${signature(fn)}`)),
    button("Fill in its arguments", () => context.open("insert", fn.name)),
    facts([["Gives", resultText(fn)], ...parameters], true),
    ...examplesOf(fn).map((example) => exampleBlock(fn, example, context)),
    evidenceOf({ functionName: fn.name }, "Where its answers come from"),
  ];
}

function exampleBlock(fn: WorksheetFunction, example: Example, { port }: PageContext): HTMLElement {
  const formula = formulaOf(fn, example.given);
  return element(
    "div",
    { class: "example" },
    insertControl(port, () => formula).block,
    element("p", { class: "basis" }, `gives ${givesText(example)} (${example.source})`),
  );
}

function givesText({ gives, within }: Example): string {
  const all: unknown[] = [gives].flat(2);
  const text = all.filter((value) => value !== "" && value !== "…").join(", ");
  if (text === "") return "a text";
  return within === undefined ? text : `${text}, to within ${within}`;
}
