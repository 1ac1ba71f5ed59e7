import {
  type Missing,
  nextMissing,
  runProgress,
  type ShownWorkbook,
  type StepProgress,
  stepOf,
} from "../../workbook/sheets/run-progress";
import { STEPS, type Step } from "../../workbook/sheets/sheets-of-the-plan";
import type { Grid } from "../grid/grid";
import { button, byId } from "./page";
import { focusGrid } from "./regions";

/** Reading the whole plan takes a moment: it waits until nothing has changed for so long. */
const QUIET_MS = 700;

/** Sheets that no step knows: a workbook of somebody else's, or a sheet one has added. */
const OTHERS = "Other sheets";
type Group = Step | typeof OTHERS;

const groupOf = (sheet: string): Group => stepOf(sheet) ?? OTHERS;

function progressWords({ isBegun, missing }: StepProgress): string {
  if (missing.length > 0) return `${missing.length} to fill in`;
  return isBegun ? "filled in" : "";
}

/**
 * The tabs below the grid: the steps of a run with how far each has come, and under them the sheets of the
 * step that is open. A workbook that is no plan has one row of tabs only.
 */
class SheetTabs {
  private readonly steps = byId("steps", HTMLUListElement);
  private readonly tabs = byId("sheets", HTMLUListElement);
  private readonly next = byId("next-step", HTMLElement);
  private shown = "";
  private progress: readonly StepProgress[] = [];
  private waiting: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly grid: Grid) {}

  refresh(): void {
    const active = this.grid.activeSheet();
    const names = this.grid.sheetNames();
    const now = JSON.stringify([active, names]);
    if (now !== this.shown) {
      this.shown = now;
      this.drawTabs(names, active);
      this.drawSteps(names, active);
    }
    clearTimeout(this.waiting);
    this.waiting = setTimeout(() => this.readProgress(), QUIET_MS);
  }

  private readProgress(): void {
    const book: ShownWorkbook = this.grid.cells.shownWorkbook(this.grid.sheetNames());
    this.progress = runProgress(book);
    this.drawSteps(book.sheets, this.grid.activeSheet());
    this.drawNext(nextMissing(book, this.progress));
  }

  private drawTabs(names: readonly string[], active: string): void {
    const group = groupOf(active);
    const items = names.map((name) => {
      const item = document.createElement("li");
      item.hidden = groupOf(name) !== group;
      const choose = button(name, () => this.grid.showSheet(name));
      choose.setAttribute("aria-current", String(name === active));
      item.append(choose);
      return item;
    });
    replaceKeepingFocus(this.tabs, items);
    this.tabs.querySelector('[aria-current="true"]')?.scrollIntoView({ block: "nearest", inline: "nearest" });
  }

  private drawSteps(names: readonly string[], active: string): void {
    const groups = ([...STEPS, OTHERS] as const).filter((group) =>
      names.some((name) => groupOf(name) === group),
    );
    const hasSteps = groups.some((group) => group !== OTHERS);
    const items = (hasSteps ? groups : []).map((group) => this.stepItem(group, names, active));
    replaceKeepingFocus(this.steps, items);
  }

  private stepItem(group: Group, names: readonly string[], active: string): HTMLLIElement {
    const item = document.createElement("li");
    const progress = this.progress.find(({ step }) => step === group);
    const first = progress?.missing[0]?.sheet ?? names.find((name) => groupOf(name) === group) ?? active;
    const choose = button(group, () => this.grid.showSheet(first));
    choose.dataset.step = group;
    choose.dataset.leads = first;
    choose.setAttribute("aria-current", groupOf(active) === group ? "step" : "false");
    const words = progress === undefined ? "" : progressWords(progress);
    if (words !== "") {
      const state = document.createElement("span");
      state.textContent = words;
      choose.append(" ", state);
    }
    item.append(choose);
    return item;
  }

  private drawNext(missing: Missing | undefined): void {
    this.next.hidden = missing === undefined;
    if (missing === undefined) return;
    const { sheet, address, what } = missing;
    const go = button(`${what}, on ${sheet}`, () => {
      this.grid.showSheet(sheet);
      this.grid.select(address);
      focusGrid();
    });
    go.dataset.leads = `${sheet} ${address}`;
    replaceKeepingFocus(this.next, ["Next: ", go]);
  }
}

/**
 * Draws a place anew, where it shows something else than before: the page is laid out and painted for it. Where the
 * focus stood in it, it goes to what is current there, not to the top of the page.
 *
 * @param content - Buttons that lead elsewhere differ in what they show or in their data.
 */
function replaceKeepingFocus(place: HTMLElement, content: readonly (Node | string)[]): void {
  const drawn = place.cloneNode() as HTMLElement;
  drawn.replaceChildren(...content);
  if (drawn.isEqualNode(place)) return;
  const isFocused = place.contains(document.activeElement);
  place.replaceChildren(...drawn.childNodes);
  if (isFocused) {
    (
      place.querySelector<HTMLElement>('[aria-current]:not([aria-current="false"])') ??
      place.querySelector("button")
    )?.focus();
  }
}

/** Mounts the tabs; they follow the workbook from then on. */
export function mountSheetTabs(grid: Grid): void {
  const tabs = new SheetTabs(grid);
  grid.onChange(() => tabs.refresh());
  tabs.refresh();
}
