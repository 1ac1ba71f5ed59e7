import { columnLetters } from "../../formula/addresses";
import type { CellView, Grid, SheetView } from "../grid/grid";
import { byId } from "./page";

function headingCell(text: string, scope: "col" | "row"): HTMLTableCellElement {
  const cell = document.createElement("th");
  cell.scope = scope;
  cell.textContent = text;
  return cell;
}

function dataCell({ value, sentence }: CellView): HTMLTableCellElement {
  const cell = document.createElement("td");
  cell.textContent = value;
  if (sentence === "") return cell;
  const words = document.createElement("span");
  words.className = "sentence";
  words.textContent = sentence;
  cell.append(" ", words);
  return cell;
}

/** Words that stand alone in a row, as titles do, have the rest of it: in one column they would be a tower. */
function dataCells(row: SheetView[number]): HTMLTableCellElement[] {
  const first = row.findIndex(({ value }) => value !== "");
  const isAlone = row.every(({ value }, column) => column === first || value === "");
  if (first < 0 || !isAlone) return row.map(dataCell);
  const cells = row.slice(0, first + 1).map(dataCell);
  const words = cells[first];
  if (words !== undefined) words.colSpan = row.length - first;
  return cells;
}

function tableOf(name: string, rows: SheetView): HTMLTableElement {
  const table = document.createElement("table");
  table.createCaption().textContent = `${name}, read only. Select a cell in the field "Cell" above to change it.`;
  const corner = headingCell("Row", "col");
  const letters = (rows[0] ?? []).map((_, column) => headingCell(columnLetters(column), "col"));
  table
    .createTHead()
    .insertRow()
    .append(corner, ...letters);
  const body = table.createTBody();
  for (const [index, row] of rows.entries()) {
    body.insertRow().append(headingCell(String(index + 1), "row"), ...dataCells(row));
  }
  return table;
}

/** The active sheet as a table that a screen reader can walk; it stands in the place of the grid while switched on. */
export function mountTableView(grid: Grid): void {
  const toggle = byId("as-table", HTMLButtonElement);
  const place = byId("table", HTMLElement);
  const picture = byId("grid", HTMLElement);
  // It scrolls, so it must be reachable by keyboard.
  place.tabIndex = 0;

  function refresh(): void {
    if (!place.hidden) place.replaceChildren(tableOf(grid.activeSheet(), grid.sheetView()));
  }

  toggle.addEventListener("click", () => {
    place.hidden = !place.hidden;
    picture.hidden = !place.hidden;
    toggle.setAttribute("aria-pressed", String(!place.hidden));
    refresh();
  });
  grid.onChange(refresh);
}
