import type { EnquiryWish, ShareEnquiry } from "../pane-files";
import { element } from "../parts/dom";
import { textField } from "../parts/fields";
import { freshId } from "../parts/fresh-id";

/** An enquiry among those for whom a copy can be made. */
export interface EnquiryOption {
  readonly control: HTMLInputElement;
  readonly block: HTMLElement;
  /** The enquiry as it is wished, or what is still missing, in a sentence. */
  wish(): EnquiryWish | string;
}

function tickBox(words: string): { readonly control: HTMLInputElement; readonly block: HTMLElement } {
  const control = element("input", { type: "checkbox", id: freshId("line") });
  control.checked = true;
  const block = element("span", {}, control, element("label", { for: control.id }, ` ${words} `));
  return { control, block };
}

/**
 * Asks for a name that the plan does not know, and about which lines that one is asked.
 *
 * @param group - Name of the radio buttons it is one of.
 */
export function enquiryOption({ word, label, sheets, lines }: ShareEnquiry, group: string): EnquiryOption {
  const kind = label.toLowerCase();
  const control = element("input", { type: "radio", name: group, id: freshId("enquiry") });
  const title = element("label", { for: control.id }, ` Any other ${kind}, by name: ${sheets.join(", ")}`);
  const name = textField({ label: `Name of the ${kind}` });
  const asked = lines.map((line) => ({ line, ...tickBox(line) }));
  const boxes = element(
    "fieldset",
    {},
    element("legend", {}, "Lines asked about"),
    ...asked.map(({ block }) => block),
  );
  for (const field of [name.control, ...asked.map((one) => one.control)])
    field.addEventListener("input", () => {
      control.checked = true;
    });
  const details = element("div", { class: "choices" }, name.block, boxes);
  return {
    control,
    block: element("div", {}, control, title, details),
    wish() {
      const given = name.control.value.trim();
      if (given === "") return `Give the name of the ${kind}.`;
      const chosen = asked.flatMap((one) => (one.control.checked ? [one.line] : []));
      if (chosen.length === 0) return "Tick at least one line to ask about.";
      return { whom: word, name: given, enquiry: chosen.length === lines.length ? [] : chosen };
    },
  };
}
