import { sentenceOf } from "../../core/refusal";
import type { AnswersFound } from "../pane-files";
import { element, fill } from "../parts/dom";
import { button } from "../parts/fields";
import { freshId } from "../parts/fresh-id";

/** The list of what came back, with a tick box for each answer that can be taken; those that are fine are ticked. */
export function answersList(
  { entries, remarks, counts }: AnswersFound,
  take: (numbers: readonly number[]) => Promise<readonly (Node | string)[]>,
): HTMLElement {
  const rows = entries.map(({ number, state, words, canBeTaken, isFine }) => {
    const control = element("input", { type: "checkbox", id: freshId("answer") });
    control.checked = isFine;
    control.disabled = !canBeTaken;
    const label = element("label", { for: control.id }, ` ${state}: ${words}`);
    return { number, control, block: element("div", {}, control, label) };
  });
  const outcome = element("div", { role: "status" });
  const press = button("Take the ticked answers", () => void run(), "main");

  async function run(): Promise<void> {
    const numbers = rows.flatMap(({ number, control }) => (control.checked ? [number] : []));
    if (numbers.length === 0) {
      fill(outcome, element("p", {}, "No answer is ticked."));
      return;
    }
    press.disabled = true;
    try {
      fill(outcome, ...(await take(numbers)));
    } catch (problem) {
      fill(outcome, element("p", { class: "refusal" }, sentenceOf(problem)));
      press.disabled = false;
    }
  }

  return element(
    "div",
    {},
    ...remarks.map((remark) => element("p", { class: "refusal" }, remark)),
    element("p", {}, counts),
    element("fieldset", {}, element("legend", {}, "What came back"), ...rows.map(({ block }) => block)),
    press,
    outcome,
  );
}

/** The files that were chosen and the text that was pasted, as they are read. */
export async function answerSources(
  files: Iterable<File>,
  pasted: string,
): Promise<{ readonly name: string; readonly bytes: Uint8Array }[]> {
  const read = await Promise.all(
    [...files].map(async (file) => ({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) })),
  );
  const text = pasted.trim() === "" ? [] : [{ name: "pasted text", bytes: new TextEncoder().encode(pasted) }];
  return [...read, ...text];
}
