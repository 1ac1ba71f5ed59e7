import { sentenceOf } from "../../core/refusal";
import { answerSources, answersList } from "../../taskpane/repair/answers-list";
import type { AnswerSource } from "../../workbook/answers/answer-file";
import type { AnswersQuestion } from "../../workbook/answers/answers-question";
import type { WithAnswers } from "../files/open-run";
import { button } from "./page";

type Ask = (sources: readonly AnswerSource[]) => Promise<AnswersQuestion>;

function labelled<T extends HTMLElement>(words: string, control: T): HTMLElement {
  const label = document.createElement("label");
  label.append(`${words} `, control);
  return label;
}

/** The dialog from the files that came back to the answers that are taken. */
class AnswersDialog {
  private readonly dialog = document.createElement("dialog");
  private readonly chosen = document.createElement("input");
  private readonly pasted = document.createElement("textarea");
  private readonly words = document.createElement("p");
  private taken: WithAnswers | undefined;

  constructor(
    private readonly ask: Ask,
    private readonly date: string,
  ) {
    this.dialog.className = "share-dialog";
    this.dialog.setAttribute("aria-label", "Bring answers in");
    this.words.setAttribute("role", "status");
    Object.assign(this.chosen, { type: "file", multiple: true, id: "answer-files" });
    this.pasted.rows = 3;
    const heading = document.createElement("h2");
    heading.textContent = "Bring answers in";
    this.dialog.append(
      heading,
      labelled("Files that came back (.xlsx, .csv, .txt)", this.chosen),
      labelled("Or paste the table of a mail", this.pasted),
      this.words,
      button("Read the answers", () => void this.read()),
      this.cancel(),
    );
  }

  private cancel(): HTMLButtonElement {
    return button("Cancel", () => this.dialog.close());
  }

  private async read(): Promise<void> {
    const sources = await answerSources(this.chosen.files ?? [], this.pasted.value);
    this.words.textContent = sources.length === 0 ? "Choose a file, or paste a table." : "Working …";
    if (sources.length === 0) return;
    try {
      this.list(await this.ask(sources));
    } catch (fault) {
      this.words.textContent = sentenceOf(fault);
    }
  }

  private list(question: AnswersQuestion): void {
    const list = answersList(question, async (numbers) => {
      this.taken = { bytes: await question.take(numbers, this.date), count: numbers.length };
      this.dialog.close();
      return [];
    });
    const heading = document.createElement("h2");
    heading.textContent = "Take what is right";
    this.dialog.replaceChildren(heading, list, this.cancel());
  }

  run(): Promise<WithAnswers | undefined> {
    return new Promise((resolve) => {
      this.dialog.addEventListener("close", () => {
        this.dialog.remove();
        resolve(this.taken);
      });
      document.body.append(this.dialog);
      this.dialog.showModal();
    });
  }
}

/**
 * Asks for what came back, shows it line by line with tick boxes, and takes what is ticked.
 *
 * @param date - The day that the log says.
 * @returns The plan with the answers; `undefined` where nothing is to be taken.
 */
export function askForAnswers(ask: Ask, date: string): Promise<WithAnswers | undefined> {
  return new AnswersDialog(ask, date).run();
}
