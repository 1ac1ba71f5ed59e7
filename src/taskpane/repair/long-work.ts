import { sentenceOf } from "../../core/refusal";
import type { Work } from "../../host/port";
import { element, fill } from "../parts/dom";
import { button } from "../parts/fields";

/** A button for work that takes its time: shows how far it is, and can be stopped. */
export interface LongWork {
  readonly block: HTMLElement;
  readonly press: HTMLButtonElement;
}

/**
 * @param label - What the button says.
 * @param task - Does the work; gives what to show when it is over, after a stop too.
 */
export function longWork(label: string, task: (work: Work) => Promise<readonly (Node | string)[]>): LongWork {
  const bar = element("progress", { max: "1", value: "0", "aria-label": `${label}: how far it is` });
  const doing = element("div", {});
  const outcome = element("div", { role: "status", tabindex: "-1" });
  const press = button(label, () => void run());

  async function run(): Promise<void> {
    const stopper = new AbortController();
    const stop = button("Stop", () => stopper.abort());
    bar.value = 0;
    press.disabled = true;
    fill(doing, bar, stop);
    fill(outcome);
    stop.focus();
    try {
      const progress = (done: number) => {
        bar.value = done;
      };
      fill(outcome, await task({ signal: stopper.signal, progress }));
    } catch (problem) {
      fill(outcome, element("p", { class: "refusal" }, sentenceOf(problem)));
    }
    const hadFocus = doing.contains(document.activeElement);
    fill(doing);
    press.disabled = false;
    if (hadFocus) (press.hidden ? outcome : press).focus();
  }

  return { block: element("div", { class: "long-work" }, press, doing, outcome), press };
}
