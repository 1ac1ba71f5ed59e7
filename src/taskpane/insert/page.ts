import { catalogue, functionNamed, type ListedFunction, NAMESPACE } from "../../functions/catalogue";
import type { Example } from "../../functions/declare";
import { TOPICS } from "../../functions/topics";
import type { RenderPage } from "../page";
import { afterPause, element, fill } from "../parts/dom";
import { button, choiceField, fieldRow, searchField } from "../parts/fields";
import { fitsFunction } from "../parts/find-function";
import { separatorsOf } from "../parts/insert";
import { type ArgumentForm, argumentForm } from "./argument-form";
import { entryOf } from "./entry";

const ALL = "all topics";

/** Functions under the heading of their topic, as the browser's own list shows them. */
function options(found: readonly ListedFunction[]): HTMLElement[] {
  return TOPICS.flatMap((topic) => {
    const own = found.filter((fn) => fn.topic === topic);
    const items = own.map(({ name }) => element("option", { value: name }, name));
    return own.length === 0 ? [] : [element("optgroup", { label: topic }, ...items)];
  });
}

/** The worked cases come with the list of functions, which is fetched when it is needed. */
async function firstExample(name: string): Promise<Example | undefined> {
  const { examplesOf } = await import(/* webpackChunkName: "functions-list" */ "../../functions/examples");
  const fn = functionNamed(name);
  return fn === undefined ? undefined : examplesOf(fn)[0];
}

/** Insert a function: chosen by topic or search, its arguments typed into fields, its answer seen before it is in the sheet. */
export const render: RenderPage = (root, context) => {
  const topic = choiceField({ label: "Topic" }, [ALL, ...TOPICS]);
  const search = searchField({ label: "Find", hint: "Part of a name, or of what it does" });
  const choice = choiceField({ label: "Function" }, []);
  const count = element("p", { class: "count", role: "status" });
  const shown = element("section", { "aria-label": "Arguments" });
  let form: ArgumentForm | undefined;

  const showForm = async () => {
    const fn = functionNamed(choice.control.value);
    if (fn === undefined || context.state.part === fn.name) return;
    context.state.part = fn.name;
    const made = argumentForm(fn, context.port, await separatorsOf(context.port));
    form?.leave();
    form = made;
    const example = button("Fill in a worked case", async () => {
      const given = (await firstExample(fn.name))?.given ?? [];
      const parameters = Object.values(fn.parameters);
      made.enter(parameters.map(({ takes }, at) => entryOf(given[at], takes === "cell")));
    });
    const help = button("Help", () => context.open("functions", fn.name));
    fill(
      shown,
      element("h3", {}, `${NAMESPACE}.${fn.name}`),
      element("p", {}, fn.summary),
      example,
      " ",
      help,
      made.block,
    );
  };
  const list = () => {
    const found = catalogue.filter(
      (fn) =>
        (topic.control.value === ALL || fn.topic === topic.control.value) &&
        fitsFunction(fn, search.control.value),
    );
    count.textContent =
      found.length === 0 ? "No function fits: try one word of it" : `${found.length} functions`;
    const before = choice.control.value;
    fill(choice.control, ...options(found));
    if (found.some(({ name }) => name === before)) choice.control.value = before;
    void showForm();
  };
  topic.control.addEventListener("change", list);
  search.control.addEventListener("input", afterPause(list));
  choice.control.addEventListener("change", () => void showForm());
  root.append(fieldRow(topic, search), choice.block, count, shown);
  const asked = functionNamed(context.state.part.toUpperCase())?.name ?? "TEMPERED_RANGE";
  context.state.part = "";
  fill(choice.control, ...options(catalogue));
  choice.control.value = asked;
  list();
  return () => form?.leave();
};
