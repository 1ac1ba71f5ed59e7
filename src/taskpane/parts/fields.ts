import { element } from "./dom";
import { freshId } from "./fresh-id";
import type { LineFact } from "./selected-line";

interface FieldText {
  readonly label: string;
  readonly hint?: string;
  /** What of the selected line of the run the field takes over while the pane follows the selection. */
  readonly line?: LineFact;
}

/** A labelled control with its hint, ready to be placed. */
export interface Field<T extends HTMLElement> {
  readonly block: HTMLElement;
  readonly control: T;
}

function field<T extends HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement>(
  control: T,
  text: FieldText,
): Field<T> {
  control.id = freshId("field");
  if (text.line !== undefined) control.dataset.line = text.line;
  const label = element("label", { for: control.id }, text.label);
  if (text.hint === undefined) return { control, block: element("div", { class: "field" }, label, control) };
  const hint = element("p", { class: "hint", id: `${control.id}-hint` }, text.hint);
  control.setAttribute("aria-describedby", hint.id);
  return { control, block: element("div", { class: "field" }, label, control, hint) };
}

/** One line of text; numbers too, since a unit may be typed after them. */
export function textField(text: FieldText, value = ""): Field<HTMLInputElement> {
  const control = element("input", { type: "text", autocomplete: "off", spellcheck: "false" });
  control.value = value;
  return field(control, text);
}

export function searchField(text: FieldText): Field<HTMLInputElement> {
  return field(element("input", { type: "search", autocomplete: "off", spellcheck: "false" }), text);
}

/** Several lines of text, such as a list pasted from a sheet. */
export function linesField(text: FieldText, lines: number, value = ""): Field<HTMLTextAreaElement> {
  const control = element("textarea", { rows: String(lines), autocomplete: "off", spellcheck: "false" });
  control.value = value;
  return field(control, text);
}

/** A choice from a list; the browser's own control is reached by keyboard and touch everywhere. */
export function choiceField(text: FieldText, choices: readonly string[]): Field<HTMLSelectElement> {
  const control = element("select", {}, ...choices.map((choice) => element("option", {}, choice)));
  return field(control, text);
}

/** Fields side by side where the pane is wide enough for two. */
export function fieldRow(...fields: readonly Field<HTMLElement>[]): HTMLElement {
  return element("div", { class: "field-row" }, ...fields.map(({ block }) => block));
}

export function button(
  text: string,
  pressed: () => void,
  kind: "main" | "plain" = "plain",
): HTMLButtonElement {
  const made = element("button", { type: "button", class: `button ${kind}` }, text);
  made.addEventListener("click", pressed);
  return made;
}
