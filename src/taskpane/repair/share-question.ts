import type { ReadyCopy, ShareQuestion, ShareWish } from "../pane-files";
import { element, fill } from "../parts/dom";
import { button } from "../parts/fields";
import { freshId } from "../parts/fresh-id";
import { enquiryOption } from "./enquiry-option";
import { told } from "./told";

const NOBODY = "Say for whom the copy is, or tick the sheets.";

interface Option {
  readonly control: HTMLInputElement;
  readonly block: HTMLElement;
}

function option(kind: "radio" | "checkbox", name: string, words: string): Option {
  const control = element("input", { type: kind, name, id: freshId("share") });
  return { control, block: element("div", {}, control, element("label", { for: control.id }, ` ${words}`)) };
}

/** The list of all that is in a copy, with the button that opens it. */
function readyCopy({ list, open }: ReadyCopy): HTMLElement {
  const done = element("div", { role: "status" });
  const press = button("Open this copy", async () => {
    press.disabled = true;
    fill(done, told(await open()));
  });
  return element(
    "div",
    {},
    element("p", {}, "This is all that travels:"),
    element("ul", {}, ...list.map((line) => element("li", {}, line))),
    press,
    done,
  );
}

/** Asks for whom a copy is; then shows what is in it, and opens it once that was looked at. */
export function askForWhom(question: ShareQuestion, date: () => string): HTMLElement {
  const group = freshId("whom");
  const whom = question.offers.map(({ label, sheets, word, name }) => ({
    word,
    name,
    ...option("radio", group, `${label}: ${sheets.join(", ")}`),
  }));
  const enquiries = question.enquiries.map((enquiry) => enquiryOption(enquiry, group));
  const own = option("radio", group, "Sheets that I choose:");
  const sheets = question.sheets.map((name) => ({ name, ...option("checkbox", freshId("sheet"), name) }));
  for (const { control } of sheets)
    control.addEventListener("change", () => {
      own.control.checked = true;
    });
  const outcome = element("div", { "aria-live": "polite" });

  function wish(): ShareWish | string {
    const chosen = whom.find(({ control }) => control.checked);
    if (chosen !== undefined) return { whom: chosen.word, ...(chosen.name && { name: chosen.name }) };
    const enquiry = enquiries.find(({ control }) => control.checked);
    if (enquiry !== undefined) return enquiry.wish();
    const names = sheets.flatMap(({ name, control }) => (control.checked ? [name] : []));
    return own.control.checked && names.length > 0 ? { sheets: names } : NOBODY;
  }

  async function show(): Promise<void> {
    const wanted = wish();
    if (typeof wanted === "string") {
      fill(outcome, element("p", { class: "refusal" }, wanted));
      return;
    }
    try {
      fill(outcome, readyCopy(await question.make(wanted, date())));
    } catch (problem) {
      const sentence = problem instanceof Error ? problem.message : String(problem);
      fill(outcome, element("p", { class: "refusal" }, sentence));
    }
  }

  return element(
    "fieldset",
    {},
    element("legend", {}, "For whom is the copy?"),
    ...whom.map(({ block }) => block),
    ...enquiries.map(({ block }) => block),
    own.block,
    element("div", { class: "choices" }, ...sheets.map(({ block }) => block)),
    button("Show what travels", () => void show()),
    outcome,
  );
}
