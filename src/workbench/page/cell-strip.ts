import type { CellView, Grid } from "../grid/grid";
import type { TypingListener } from "../grid/grid-workbook";
import { entryField } from "./entry-field";
import { byId } from "./page";
import { focusGrid } from "./regions";

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

export interface CellStrip {
  /** Puts a text into the field of the selected cell as if it were being typed. */
  resume(text: string): void;
  /** Shows a sentence in the place of the cell's result until something else is selected or changed. */
  say(sentence: string): void;
}

/**
 * The text view of the selected cell: its address, what it holds, what it comes to. Both fields can be
 * typed in, so that the sheet can be worked without its picture.
 *
 * @param typed - Told of every letter that is typed and not yet entered.
 */
export function mountCellStrip(grid: Grid, typed: TypingListener): CellStrip {
  const address = entryField("cell-address", goTo, renew);
  const content = entryField("cell-content", () => grid.write(content.text()), renew, tell);
  const result = byId("cell-result", HTMLElement);
  // A long caution scrolls, so it must be reachable by keyboard.
  result.tabIndex = 0;
  let shown = "";

  function refresh(): void {
    const cell = grid.selected();
    if (cell === null) return;
    const now = JSON.stringify(cell);
    if (now === shown) return;
    shown = now;
    address.show(cell.address);
    content.show(cell.formula);
    showResult(result, cell);
  }

  function renew(): void {
    shown = "";
    refresh();
  }

  function goTo(): void {
    const wanted = address.text();
    const found = grid.select(wanted);
    renew();
    if (found) focusGrid();
    else say(`This sheet has no cell "${wanted}".`);
  }

  /** The selected cell stays the same while its field is typed in. */
  function tell(text: string | null): void {
    const cell = grid.selected();
    typed(text === null || cell === null ? null : { sheet: cell.sheet, address: cell.address, text });
  }

  function say(sentence: string): void {
    result.textContent = sentence;
  }

  grid.onChange(refresh);
  refresh();
  return { say, resume: (text) => content.resume(text) };
}
