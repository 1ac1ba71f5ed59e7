import { button } from "./page";

export interface MenuItem {
  readonly label: string;
  readonly pressed: () => void;
}

/** A button that opens a list of commands: arrows move in it, Escape and a press elsewhere close it. */
export function mountMenu(opener: HTMLButtonElement, items: readonly MenuItem[]): void {
  const list = document.createElement("div");
  list.className = "menu";
  list.hidden = true;
  list.setAttribute("role", "menu");
  list.setAttribute("aria-label", opener.textContent ?? "");
  const entries = items.map(({ label, pressed }) => {
    const entry = button(label, () => {
      close();
      pressed();
    });
    entry.setAttribute("role", "menuitem");
    entry.tabIndex = -1;
    return entry;
  });
  list.append(...entries);
  opener.after(list);
  opener.setAttribute("aria-haspopup", "menu");
  opener.setAttribute("aria-expanded", "false");

  function open(): void {
    list.hidden = false;
    opener.setAttribute("aria-expanded", "true");
    const { left, bottom } = opener.getBoundingClientRect();
    list.style.top = `${bottom}px`;
    list.style.left = `${Math.max(0, Math.min(left, innerWidth - list.offsetWidth - 4))}px`;
    entries[0]?.focus();
  }

  function close(): void {
    const hadFocus = list.contains(document.activeElement);
    list.hidden = true;
    opener.setAttribute("aria-expanded", "false");
    if (hadFocus) opener.focus();
  }

  function move(by: number): void {
    const at = entries.indexOf(document.activeElement as HTMLButtonElement);
    entries[(at + by + entries.length) % entries.length]?.focus();
  }

  opener.addEventListener("click", () => (list.hidden ? open() : close()));
  list.addEventListener("keydown", (pressed) => {
    if (pressed.key === "Escape") close();
    else if (pressed.key === "ArrowDown") move(1);
    else if (pressed.key === "ArrowUp") move(-1);
    else if (pressed.key === "Tab") return close();
    else return;
    pressed.preventDefault();
  });
  document.addEventListener("pointerdown", ({ target }) => {
    const isInside = target instanceof Node && (list.contains(target) || opener.contains(target));
    if (!list.hidden && !isInside) close();
  });
}
