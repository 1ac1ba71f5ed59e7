import type { Grid } from "../grid/grid";
import { byId } from "./page";
import { mountSheetTabs } from "./sheet-tabs";

/** The page's own tools: choice of sheet, new sheet, undo and redo. */
export function mountTools(grid: Grid): void {
  mountSheetTabs(grid);
  byId("new-sheet", HTMLButtonElement).addEventListener("click", () => grid.addSheet());
  byId("undo", HTMLButtonElement).addEventListener("click", () => grid.undo());
  byId("redo", HTMLButtonElement).addEventListener("click", () => grid.redo());
  mountUndoKeys(grid);
}

/** Places in which the keys for undo belong to what is typed there. */
const TYPED_IN = "input, textarea, [contenteditable], .grid, dialog, .print-view";

/** What keys ask for that are pressed where nothing is typed. */
function keyedStep({ key, target, ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent) {
  const isTyping = target instanceof Element && target.closest(TYPED_IN) !== null;
  if (isTyping || altKey || ctrlKey === metaKey) return undefined;
  const letter = key.toLowerCase();
  if (letter === "y" || (letter === "z" && shiftKey)) return "redo";
  return letter === "z" ? "undo" : undefined;
}

/** Undo and redo by keys from everywhere: a button of the pane that wrote into the sheet keeps the keyboard. */
function mountUndoKeys(grid: Grid): void {
  addEventListener("keydown", (pressed) => {
    const step = keyedStep(pressed);
    if (step === undefined) return;
    pressed.preventDefault();
    grid[step]();
  });
}

/** Below this width the pane is a drawer over the sheet, and it is closed until one asks for it. */
const NARROW = "(max-width: 899px)";

/** Shows and hides the pane. */
export function mountPaneToggle(): void {
  const toggle = byId("toggle-pane", HTMLButtonElement);
  const pane = byId("pane", HTMLElement);
  const narrow = matchMedia(NARROW);

  function show(isShown: boolean): void {
    pane.hidden = !isShown;
    toggle.setAttribute("aria-pressed", String(isShown));
  }

  // Keys go on in the drawer that one has opened, so that Escape closes it.
  pane.tabIndex = -1;
  toggle.addEventListener("click", () => {
    show(pane.hidden === true);
    if (narrow.matches && !pane.hidden) pane.focus();
  });
  pane.addEventListener("keydown", ({ key }) => {
    if (key !== "Escape" || !narrow.matches) return;
    show(false);
    toggle.focus();
  });
  narrow.addEventListener("change", () => show(!narrow.matches));
  show(!narrow.matches);
}
