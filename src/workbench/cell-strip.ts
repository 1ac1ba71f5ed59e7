import type { CellView, Grid } from "./grid";
import { byId } from "./page";

/** What the selected cell comes to, in words: its value, or the error with the sentence behind it. */
function showResult(place: HTMLElement, { value, sentence }: CellView): void {
  if (sentence === "") {
    place.textContent = value === "" ? "Empty" : value;
    return;
  }
  const code = document.createElement("span");
  code.className = "fault";
  code.textContent = value;
  place.replaceChildren(code, ` ${sentence}`);
}

/**
 * The text view of the selected cell: its address, what it holds, what it comes to. Both fields can be
 * typed in, so that the sheet can be worked without its picture.
 */
export function mountCellStrip(grid: Grid): void {
  const address = byId("cell-address", HTMLInputElement);
  const content = byId("cell-content", HTMLInputElement);
  const result = byId("cell-result", HTMLElement);
  let shown = "";

  function refresh(): void {
    const cell = grid.selected();
    if (cell === null) return;
    const now = JSON.stringify(cell);
    if (now === shown) return;
    shown = now;
    address.value = cell.address;
    content.value = cell.formula;
    showResult(result, cell);
  }

  function goTo(): void {
    if (grid.select(address.value)) return;
    result.textContent = `This sheet has no cell "${address.value}".`;
    address.value = grid.selected()?.address ?? "";
  }

  const whenEntered = (field: HTMLInputElement, act: () => void) =>
    field.addEventListener("keydown", ({ key }) => {
      if (key === "Enter") act();
      if (key === "Escape") {
        shown = "";
        refresh();
      }
    });
  whenEntered(address, goTo);
  whenEntered(content, () => grid.write(content.value));
  address.disabled = false;
  content.disabled = false;
  grid.onChange(refresh);
  refresh();
}
