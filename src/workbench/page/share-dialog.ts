import type { Choice } from "../../workbook/share/audience";
import type { ShareCopy } from "../../workbook/share/share-copy";
import type { ShareQuestion } from "../../workbook/share/share-question";
import { shareList } from "../../workbook/share/share-report";
import { button } from "./page";

type Child = Node | string;

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
  if (kind === "radio") control.name = "share-for";
  return { control, block: made("div", made("label", control, ` ${words}`)) };
}

/** The question itself, and what was answered. */
class Question {
  private readonly whom;
  private readonly own = option("radio", "Sheets that I choose:");
  private readonly sheets;

  constructor({ offers, sheets }: ShareQuestion) {
    this.whom = offers.map(({ word, label, sheets: names }) => ({
      word,
      ...option("radio", `${label}: ${names.join(", ")}`),
    }));
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
    return made("fieldset", legend, ...this.whom.map(({ block }) => block), this.own.block, choices);
  }

  get answer(): Choice | undefined {
    const chosen = this.whom.find(({ control }) => control.checked);
    if (chosen !== undefined) return { kind: "for", whom: chosen.word };
    const names = this.sheets.flatMap(({ name, control }) => (control.checked ? [name] : []));
    return this.own.control.checked && names.length > 0 ? { kind: "sheets", names } : undefined;
  }
}

/**
 * Asks for whom a copy is made, makes it, and shows all that is in it before it is handed out.
 *
 * @returns The copy; `undefined` where the smith thought better of it.
 */
export function askForWhom(question: ShareQuestion, date: string): Promise<ShareCopy | undefined> {
  return new Promise((resolve) => {
    const dialog = made("dialog");
    dialog.className = "share-dialog";
    dialog.setAttribute("aria-label", "Share copy");
    const asked = new Question(question);
    const words = made("p");
    words.setAttribute("role", "status");
    let copy: ShareCopy | undefined;
    const finish = (result: ShareCopy | undefined) => {
      copy = result;
      dialog.close();
    };
    const cancel = () => button("Cancel", () => finish(undefined));

    async function show(): Promise<void> {
      const choice = asked.answer;
      words.textContent =
        choice === undefined ? "Say for whom the copy is, or tick the sheets." : "Working …";
      if (choice === undefined) return;
      try {
        const ready = await question.copy(choice, date);
        const list = made("ul", ...shareList(ready).map((line) => made("li", line)));
        const go = button("Hand out this copy", () => finish(ready));
        dialog.replaceChildren(made("h2", "This is all that travels"), list, go, cancel());
        go.focus();
      } catch (fault) {
        words.textContent = fault instanceof Error ? fault.message : String(fault);
      }
    }

    dialog.append(
      asked.block,
      words,
      button("Show what travels", () => void show()),
      cancel(),
    );
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(copy);
    });
    document.body.append(dialog);
    dialog.showModal();
  });
}
