import type { HostPort, Unsubscribe } from "../../host/port";
import { afterPause, element, fill } from "./dom";
import { enter } from "./entries";
import { button } from "./fields";
import { isInRun, type LineFact, type SelectedLine, selectedLine } from "./selected-line";

export interface FollowedLine {
  /** Says which line the pane shows, with the button that holds it. */
  readonly block: HTMLElement;
  /** Enters the line into a page that has just been drawn. */
  readonly enterInto: (page: HTMLElement) => void;
  readonly leave: Unsubscribe;
}

function enterLine(page: HTMLElement, { facts }: SelectedLine): void {
  for (const control of page.querySelectorAll<HTMLInputElement | HTMLSelectElement>("[data-line]")) {
    const value = facts[control.dataset.line as LineFact];
    if (value === undefined) continue;
    // A choice that the list does not have would leave the field empty.
    if (control instanceof HTMLSelectElement && ![...control.options].some((one) => one.value === value))
      continue;
    enter(control, value);
  }
}

/** Whether both are one line with the same facts; what the sheet works out from them may differ. */
function isSame(one: SelectedLine | null, other: SelectedLine | null): boolean {
  return JSON.stringify([one?.name, one?.facts]) === JSON.stringify([other?.name, other?.facts]);
}

/** What the sheet answers about a line, as sentences: where it stands, what to do next, what to be wary of. */
export function verdictOf({ answers }: SelectedLine): string[] {
  const { status, chance, low, high, band, next, caution } = answers;
  const percent =
    chance === undefined || Number.isNaN(Number(chance))
      ? ""
      : `, chance ${Math.round(100 * Number(chance))} %`;
  const isRange = [low, high].every((end) => end !== undefined && !Number.isNaN(Number(end)));
  const wanted = band === undefined ? "Band" : `Band of the use, ${band} HRC`;
  return [
    status === undefined ? undefined : `${wanted}: ${status}${percent}`,
    isRange ? `Expected after the temper: ${low} to ${high} HRC` : undefined,
    next === undefined ? undefined : `Next: ${next}`,
    caution === undefined || caution === "none" ? undefined : `Caution: ${caution}`,
  ].filter((sentence) => sentence !== undefined);
}

/**
 * The pane follows the selected line of the run: steel, use, sizes and temper go into the fields that ask for
 * them. Typing into such a field holds the pane where it is, and so does the button.
 *
 * @param page - Where the pages are drawn.
 * @param changed - Told of the line before its facts are entered; of `null` where the run no longer has the line that was
 *   followed, as in a new run.
 */
export function followLine(
  port: HostPort,
  page: HTMLElement,
  changed: (line: SelectedLine | null) => void,
): FollowedLine {
  const words = element("span", {});
  const hold = button("Hold", () => setHeld(!isHeld));
  const verdict = element("ul", {});
  const cautions = element("p", { class: "in-full" });
  const inFull = element("details", {}, element("summary", {}, "All cautions in full"), cautions);
  const block = element(
    "div",
    { class: "following", hidden: "" },
    element("p", {}, words, hold),
    verdict,
    inFull,
  );
  let line: SelectedLine | null = null;
  let isHeld = false;
  let asked = 0;
  let isEntering = false;

  const enterInto = (into: HTMLElement) => {
    if (line === null || isHeld) return;
    isEntering = true;
    enterLine(into, line);
    isEntering = false;
  };
  const say = () => {
    block.hidden = line === null;
    if (line === null) return;
    const { name, facts } = line;
    const said = [facts.item, facts.steel].filter((part) => part !== undefined).join(", ");
    fill(words, `${isHeld ? "Held at" : "Line"} ${name}${said === "" ? "" : `: ${said}`} `);
    hold.textContent = isHeld ? "Follow the selection" : "Hold";
    fill(verdict, ...verdictOf(line).map((sentence) => element("li", {}, sentence)));
    fill(cautions, line.cautions);
    inFull.hidden = line.cautions === "" || line.cautions === line.answers.caution;
  };
  /** A line that the run no longer has leaves nothing behind. */
  const forgetGone = async (found: SelectedLine | null) => {
    if (found !== null || line === null) return;
    const isThere = await isInRun(port, line.name).catch(() => true);
    if (!isThere) changed(null);
  };
  const look = async () => {
    if (isHeld) return;
    asked += 1;
    const own = asked;
    const found = await selectedLine(port).catch(() => null);
    // What was selected since, or held meanwhile, counts more than a slow answer.
    if (own !== asked || isHeld) return;
    const isAsBefore = isSame(found, line);
    await forgetGone(found);
    if (own !== asked) return;
    line = found;
    say();
    if (line === null || isAsBefore) return;
    changed(line);
    enterInto(page);
  };
  const setHeld = (now: boolean) => {
    isHeld = now;
    say();
    if (!now) {
      line = null;
      void look();
    }
  };
  page.addEventListener("input", ({ target }) => {
    const isLineField = target instanceof HTMLElement && target.dataset.line !== undefined;
    if (isLineField && !isEntering && line !== null && !isHeld) setHeld(true);
  });
  void look();
  const leave = port.hasSheet ? port.onSelection(afterPause(() => void look())) : () => undefined;
  return { block, enterInto, leave };
}
