import type { Grid } from "../grid/grid";
import { byId } from "./page";
import { mountSheetTabs } from "./sheet-tabs";

/** The page's own tools: choice of sheet, new sheet, undo and redo. */
export function mountTools(grid: Grid): void {
  mountSheetTabs(grid);
  byId("new-sheet", HTMLButtonElement).addEventListener("click", () => grid.addSheet());
  byId("undo", HTMLButtonElement).addEventListener("click", () => grid.undo());
  byId("redo", HTMLButtonElement).addEventListener("click", () => grid.redo());
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
