import { button, byId } from "./page";

export interface NoticeAction {
  readonly label: string;
  readonly pressed: () => void;
}

export interface Notice {
  /** Shows a sentence with remarks below and buttons beside it, in the place of what stood there. */
  show(sentence: string, remarks?: readonly string[], actions?: readonly NoticeAction[]): void;
  clear(): void;
}

/** The line under the grid that says what was done with files and kept work. */
export function mountNotice(): Notice {
  const place = byId("notice", HTMLElement);
  const words = byId("notice-words", HTMLElement);
  const buttons = byId("notice-buttons", HTMLElement);

  function clear(): void {
    place.hidden = true;
    words.replaceChildren();
    buttons.replaceChildren();
  }

  function show(
    sentence: string,
    remarks: readonly string[] = [],
    actions: readonly NoticeAction[] = [],
  ): void {
    const line = document.createElement("p");
    line.textContent = sentence;
    const list = document.createElement("ul");
    for (const remark of remarks) list.appendChild(document.createElement("li")).textContent = remark;
    words.replaceChildren(line, ...(remarks.length === 0 ? [] : [list]));
    buttons.replaceChildren(
      ...actions.map(({ label, pressed }) => button(label, pressed)),
      button("Close", clear),
    );
    place.hidden = false;
  }

  return { show, clear };
}
