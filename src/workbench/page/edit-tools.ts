import { sentenceOf } from "../../core/refusal";
import { DATE_FORMAT } from "../../workbook/sheets/parts/table-sheet";
import type { Grid } from "../grid/grid";
import { askForValues } from "./filter-dialog";
import { mountMenu } from "./menu";
import type { Notice } from "./notice";
import { byId } from "./page";

/** Number formats on offer: how a figure looks, and the pattern. */
const FORMATS: readonly (readonly [label: string, pattern: string])[] = [
  ["General", ""],
  ["1234", "0"],
  ["1234.5", "0.0"],
  ["1234.50", "0.00"],
  ["1,234.50", "#,##0.00"],
  ["12 %", "0 %"],
  ["2026-10-05", DATE_FORMAT],
  ["Text", "@"],
];
const OTHER = "other";

function formatList(grid: Grid, changed: () => void): () => void {
  const list = byId("number-format", HTMLSelectElement);
  list.append(...FORMATS.map(([label, pattern]) => new Option(label, pattern)));
  const other = new Option("", OTHER);
  list.addEventListener("change", () => {
    if (list.value !== OTHER) grid.format.setPattern(list.value);
    changed();
  });
  return () => {
    const { pattern } = grid.format;
    const isKnown = FORMATS.some(([, known]) => known === pattern);
    other.text = pattern;
    if (isKnown) other.remove();
    else list.append(other);
    list.value = isKnown ? pattern : OTHER;
  };
}

/** Letters, number format and rows of the selected cells. */
export function mountEditTools(grid: Grid, notice: Notice, moreRows: () => void): void {
  const bold = byId("bold", HTMLButtonElement);
  const showFormat = formatList(grid, refresh);

  function refresh(): void {
    bold.setAttribute("aria-pressed", String(grid.format.isBold));
    showFormat();
  }

  /** What cannot be done is said in the place for it. */
  const tried = (work: () => void | Promise<void>) => async () => {
    try {
      notice.clear();
      await work();
    } catch (fault) {
      notice.show(sentenceOf(fault));
    }
  };

  async function filter(): Promise<void> {
    const chosen = await askForValues(grid.rows.columnValues());
    if (chosen === undefined) return;
    const [shown, all] = grid.rows.filter(chosen);
    const showAll = { label: "Show all rows", pressed: () => void tried(() => grid.rows.showAll())() };
    notice.show(`${shown} of ${all} rows are shown; the others are hidden, not gone.`, [], [showAll]);
  }

  bold.addEventListener("click", () => grid.format.toggleBold());
  mountMenu(byId("rows", HTMLButtonElement), [
    { label: "Insert a row here", pressed: tried(() => grid.rows.insert()) },
    { label: "Take this row out", pressed: tried(() => grid.rows.remove()) },
    { label: "More rows: a larger plan …", pressed: moreRows },
    { label: "Sort by this column, A to Z", pressed: tried(() => grid.rows.sort("up")) },
    { label: "Sort by this column, Z to A", pressed: tried(() => grid.rows.sort("down")) },
    { label: "Filter by this column …", pressed: tried(filter) },
    { label: "Show all rows", pressed: tried(() => grid.rows.showAll()) },
  ]);
  for (const id of ["bold", "number-format", "rows"]) byId(id, HTMLElement).removeAttribute("disabled");
  grid.onChange(refresh);
  grid.onRefusal((sentence) => notice.show(sentence));
  refresh();
}
