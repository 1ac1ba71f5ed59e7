import { enquiryOption } from "../../taskpane/repair/enquiry-option";
import type { Choice } from "../../workbook/share/audience";
import type { ShareCopy } from "../../workbook/share/share-copy";
import type { ShareQuestion } from "../../workbook/share/share-question";
import { shareList } from "../../workbook/share/share-report";
import { button } from "./page";

type Child = Node | string;

const GROUP = "share-for";
const NOBODY = "Say for whom the copy is, or tick the sheets.";

function made<K extends keyof HTMLElementTagNameMap>(tag: K, ...children: Child[]): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  element.append(...children);
  return element;
}

interface Option {
  readonly control: HTMLInputElement;
  readonly block: HTMLElement;
}

function option(kind: "radio" | "checkbox", words: string): Option {
  const control = made("input");
  control.type = kind;
  if (kind === "radio") control.name = GROUP;
  return { control, block: made("div", made("label", control, ` ${words}`)) };
}

/** The question itself, and what was answered. */
class Question {
  private readonly whom;
  private readonly enquiries;
  private readonly own = option("radio", "Sheets that I choose:");
  private readonly sheets;

  constructor({ offers, enquiries, sheets }: ShareQuestion) {
    this.whom = offers.map(({ word, name, label, sheets: names }) => ({
      word,
      name,
      ...option("radio", `${label}: ${names.join(", ")}`),
    }));
    this.enquiries = enquiries.map((enquiry) => enquiryOption(enquiry, GROUP));
    this.sheets = sheets.map((name) => ({ name, ...option("checkbox", name) }));
    for (const { control } of this.sheets)
      control.addEventListener("change", () => {
        this.own.control.checked = true;
      });
  }

  get block(): HTMLElement {
    const choices = made("div", ...this.sheets.map(({ block }) => block));
    choices.className = "choices";
    const legend = made("legend", "For whom is the copy?");
    const whom = [...this.whom, ...this.enquiries].map(({ block }) => block);
    return made("fieldset", legend, ...whom, this.own.block, choices);
  }

  /** For whom the copy is, or what is still to be said, in a sentence. */
  get answer(): Choice | string {
    const chosen = this.whom.find(({ control }) => control.checked);
    if (chosen !== undefined)
      return { kind: "for", whom: chosen.word, ...(chosen.name && { name: chosen.name }) };
    const enquiry = this.enquiries.find(({ control }) => control.checked)?.wish();
    if (enquiry !== undefined) return typeof enquiry === "string" ? enquiry : { kind: "for", ...enquiry };
    const names = this.sheets.flatMap(({ name, control }) => (control.checked ? [name] : []));
    return this.own.control.checked && names.length > 0 ? { kind: "sheets", names } : NOBODY;
  }
}

/** A copy, and for whom it was made. */
export interface ChosenCopy {
  readonly copy: ShareCopy;
  readonly choice: Choice;
}

/** The dialog from the question to the list of all that travels. */
class ShareDialog {
  private readonly dialog = made("dialog");
  private readonly words = made("p");
  private readonly asked: Question;
  private chosen: ChosenCopy | undefined;

  constructor(
    private readonly question: ShareQuestion,
    private readonly date: string,
  ) {
    this.asked = new Question(question);
    this.dialog.className = "share-dialog";
    this.dialog.setAttribute("aria-label", "Share copy");
    this.words.setAttribute("role", "status");
    const show = button("Show what travels", () => void this.show());
    this.dialog.append(this.asked.block, this.words, show, this.cancel());
  }

  private cancel(): HTMLButtonElement {
    return button("Cancel", () => this.dialog.close());
  }

  private async show(): Promise<void> {
    const choice = this.asked.answer;
    this.words.textContent = typeof choice === "string" ? choice : "Working …";
    if (typeof choice === "string") return;
    try {
      this.list({ copy: await this.question.copy(choice, this.date), choice });
    } catch (fault) {
      this.words.textContent = fault instanceof Error ? fault.message : String(fault);
    }
  }

  private list(ready: ChosenCopy): void {
    const lines = made("ul", ...shareList(ready.copy).map((line) => made("li", line)));
    const go = button("Hand out this copy", () => {
      this.chosen = ready;
      this.dialog.close();
    });
    this.dialog.replaceChildren(made("h2", "This is all that travels"), lines, go, this.cancel());
    go.focus();
  }

  run(): Promise<ChosenCopy | undefined> {
    return new Promise((resolve) => {
      this.dialog.addEventListener("close", () => {
        this.dialog.remove();
        resolve(this.chosen);
      });
      document.body.append(this.dialog);
      this.dialog.showModal();
    });
  }
}

/**
 * Asks for whom a copy is made, makes it, and shows all that is in it before it is handed out.
 *
 * @returns The copy and for whom it is; `undefined` where the smith thought better of it.
 */
export function askForWhom(question: ShareQuestion, date: string): Promise<ChosenCopy | undefined> {
  return new ShareDialog(question, date).run();
}
