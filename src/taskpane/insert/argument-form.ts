import { splitAddress } from "../../formula/references";
import type { AnyParameter, WorksheetFunction } from "../../functions/declare";
import { parameterHelp } from "../../functions/metadata";
import type { HostPort, Separators } from "../../host/port";
import type { Reading } from "../cell/readings";
import { ask, list } from "../parts/ask";
import { afterPause, element, fill } from "../parts/dom";
import { button, linesField, textField } from "../parts/fields";
import { freshId } from "../parts/fresh-id";
import { insertControl } from "../parts/insert";
import { answerShown, preview } from "./answer";
import { argumentText, callText } from "./call-text";

interface ArgumentField {
  readonly block: HTMLElement;
  readonly control: HTMLInputElement | HTMLTextAreaElement;
  /** Says below the field why it cannot be read. */
  readonly complain: (sentence: string) => void;
}

/** Words that may be chosen; anything else may be typed all the same. */
function offer(control: HTMLInputElement, words: readonly string[]): HTMLElement {
  const id = freshId("words");
  control.setAttribute("list", id);
  return element("datalist", { id }, ...words.map((word) => element("option", { value: word })));
}

function wordsOf({ kind, words }: AnyParameter): readonly string[] {
  return kind === "steel" ? list(ask("STEELS")) : words;
}

function hintOf(parameter: AnyParameter): string {
  const accepted = parameter.accepts === "" ? "" : ` Takes ${parameter.accepts}.`;
  const several = parameter.takes === "cell" ? "" : " Several: one a line, or cells.";
  return `${parameterHelp(parameter)}${accepted}${several}`;
}

function argumentField(parameter: AnyParameter, port: HostPort): ArgumentField {
  const text = {
    label: parameter.optional ? `${parameter.label} (may be left out)` : parameter.label,
    hint: hintOf(parameter),
  };
  const made = parameter.takes === "cell" ? textField(text) : linesField(text, 2);
  const { control } = made;
  const fault = element("p", { class: "fault", role: "status" });
  const take = button("Cell", async () => {
    const selected = await port.selection();
    if (selected === null) return;
    control.value = `=${selected.address}`;
    control.dispatchEvent(new Event("input", { bubbles: true }));
  });
  take.setAttribute("aria-label", `Take ${parameter.label} from the selected cell`);
  const words = control instanceof HTMLInputElement ? wordsOf(parameter) : [];
  const entry = element("div", { class: "entry" }, control, port.hasSheet ? take : null);
  made.block.querySelector("label")?.after(entry);
  made.block.append(fault);
  if (words.length > 0 && control instanceof HTMLInputElement) made.block.append(offer(control, words));
  return { block: made.block, control, complain: (sentence) => fill(fault, sentence) };
}

export interface ArgumentForm {
  readonly block: HTMLElement;
  /** Enters arguments as a formula has them, in place of what stands there. */
  readonly enter: (given: readonly string[]) => void;
  readonly leave: () => void;
}

/** Sentences of fields that hold something; an empty one is not a fault while the form is being filled in. */
function complainAll(fields: readonly ArgumentField[], readings: readonly Reading[]): void {
  for (const [at, { control, complain }] of fields.entries())
    complain(control.value.trim() === "" ? "" : (readings[at]?.fault ?? ""));
}

function unanswered(missing: readonly AnyParameter[]): string {
  return missing.length > 0
    ? `Still to fill in: ${missing.map(({ label }) => label).join(", ")}.`
    : "This cannot be read as a formula: check quotes and brackets.";
}

/** A field for each argument of a function, what the call comes to, and the button that puts it into the sheet. */
export function argumentForm(fn: WorksheetFunction, port: HostPort, written: Separators): ArgumentForm {
  const parameters = Object.values(fn.parameters);
  const fields = parameters.map((parameter) => argumentField(parameter, port));
  let beside = "";
  const given = () => {
    const place = { decimal: written.decimal, sheet: splitAddress(beside).sheet };
    return fields.map(({ control }, at) =>
      argumentText(control.value, parameters[at] as AnyParameter, place),
    );
  };
  const formula = () => callText(fn, given());
  const answer = element("div", { class: "answer-block", "aria-live": "polite" });
  const insert = insertControl(port, formula);
  let asked = 0;

  const missing = () => parameters.filter(({ optional }, at) => !optional && given()[at] === "");
  const found = async () => {
    beside = (await port.selection().catch(() => null))?.address ?? "";
    return missing().length > 0 ? null : preview(port, formula(), beside).catch(() => null);
  };
  const refresh = async () => {
    asked += 1;
    const own = asked;
    const seen = await found();
    // What was typed since has an answer of its own on the way.
    if (own !== asked) return;
    insert.refresh();
    complainAll(fields, seen?.readings ?? []);
    fill(answer, seen === null ? unanswered(missing()) : answerShown(fn, seen));
  };
  const soon = afterPause(() => void refresh(), 250);
  for (const { control } of fields) control.addEventListener("input", soon);
  const stop = port.onSelection(soon);
  void refresh();
  return {
    block: element("div", {}, ...fields.map(({ block }) => block), answer, insert.block),
    enter(entered) {
      for (const [at, { control }] of fields.entries()) control.value = entered[at] ?? "";
      soon();
    },
    leave: stop,
  };
}
