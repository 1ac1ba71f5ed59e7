/** A part of the page that F6 leads to. */
interface Region {
  readonly within: string;
  /** Takes the focus when one arrives. */
  readonly target: string;
}

const GRID_EDITOR = '.grid [data-u-comp="editor"]';

const REGIONS: readonly Region[] = [
  { within: ".bar", target: ".tools button:enabled" },
  { within: ".cell", target: "#cell-content" },
  { within: ".grid", target: GRID_EDITOR },
  { within: ".path", target: '#sheets [aria-current="true"]' },
  { within: ".pane", target: '#pane [aria-current="page"]' },
];

function isShown(element: HTMLElement): boolean {
  return element.getClientRects().length > 0;
}

/** Gives the grid the keyboard, where a place in it was chosen elsewhere: what is typed next belongs to that cell. */
export function focusGrid(): void {
  document.querySelector<HTMLElement>(GRID_EDITOR)?.focus();
}

function move(by: 1 | -1): void {
  const count = REGIONS.length;
  const from = REGIONS.findIndex(({ within }) => document.activeElement?.closest(within) != null);
  for (let step = 1; step <= count; step += 1) {
    const region = REGIONS[(from + by * step + count * 2) % count];
    const target = region === undefined ? null : document.querySelector<HTMLElement>(region.target);
    if (target === null || !isShown(target)) continue;
    target.focus();
    return;
  }
}

/**
 * F6 leads to the next region of the page, Shift+F6 back. Within the grid Tab moves from cell to cell, so that
 * without these keys nothing but the pointer would lead out of it.
 */
export function mountRegionKeys(): void {
  const pressed = (key: KeyboardEvent) => {
    if (key.key !== "F6") return;
    key.preventDefault();
    key.stopPropagation();
    move(key.shiftKey ? -1 : 1);
  };
  addEventListener("keydown", pressed, true);
}
