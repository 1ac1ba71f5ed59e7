import type { Grid } from "../grid/grid";
import { button, byId } from "./page";

function mountSheets(grid: Grid): void {
  const list = byId("sheets", HTMLUListElement);
  let shown = "";

  function refresh(): void {
    const active = grid.activeSheet();
    const names = grid.sheetNames();
    const now = JSON.stringify([active, names]);
    if (now === shown) return;
    shown = now;
    const items = names.map((name) => {
      const item = document.createElement("li");
      const choose = button(name, () => grid.showSheet(name));
      choose.setAttribute("aria-current", String(name === active));
      item.append(choose);
      return item;
    });
    const focused = list.contains(document.activeElement);
    list.replaceChildren(...items);
    if (focused) list.querySelector<HTMLElement>('[aria-current="true"]')?.focus();
  }

  grid.onChange(refresh);
  refresh();
}

/** The page's own tools: choice of sheet, new sheet, undo and redo. */
export function mountTools(grid: Grid): void {
  mountSheets(grid);
  byId("new-sheet", HTMLButtonElement).addEventListener("click", () => grid.addSheet());
  byId("undo", HTMLButtonElement).addEventListener("click", () => grid.undo());
  byId("redo", HTMLButtonElement).addEventListener("click", () => grid.redo());
}

/** Shows and hides the pane. */
export function mountPaneToggle(): void {
  const toggle = byId("toggle-pane", HTMLButtonElement);
  const pane = byId("pane", HTMLElement);
  toggle.addEventListener("click", () => {
    pane.hidden = !pane.hidden;
    toggle.setAttribute("aria-pressed", String(!pane.hidden));
  });
}
