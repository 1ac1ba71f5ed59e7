import { splitAddress } from "../../formula/references";
import { quotedSheet } from "../../formula/sheet-names";
import { isErrorCode } from "../../formula/tokens";
import { ENGLISH, type FormulaChange, type HostPort, type SelectedCell, type Work } from "../../host/port";
import type { Grid } from "./grid";

export interface GridPort extends HostPort {
  /** The pane is up before the grid is: hands the grid over once it stands. */
  connect(grid: Grid): void;
}

/** Cells written between two looks at how far the work is. */
const CHANGES_AT_ONCE = 50;

/** Lets the page answer a press before the work goes on. */
const pause = () => new Promise<void>((resolve) => setTimeout(resolve, 0));

function selectedCell(grid: Grid | undefined): SelectedCell | null {
  const cell = grid?.selected() ?? null;
  if (grid === undefined || cell === null) return null;
  const { sheet, address, formula, value, sentence } = cell;
  const filledBy = grid.filledBy();
  const error = isErrorCode(value) ? value : "";
  const figure = /^-?\d+(\.\d+)?$/.test(value) ? value : "";
  const held = { formula, shown: formula, value, figure, error, sentence };
  return { address: `${quotedSheet(sheet)}!${address}`, ...held, filledBy };
}

async function replaceAll(grid: Grid, changes: readonly FormulaChange[], work: Work): Promise<number> {
  let written = 0;
  for (const change of changes) {
    if (work.signal.aborted) break;
    grid.cells.replace(change);
    written += 1;
    if (written % CHANGES_AT_ONCE !== 0) continue;
    work.progress(written / changes.length);
    await pause();
  }
  return written;
}

/** What the pane may ask of the workbench. */
export function gridPort(): GridPort {
  let grid: Grid | undefined;
  const listeners = new Set<() => void>();

  /** The grid with a selected cell. */
  function ready(): Grid {
    if (grid === undefined || grid.selected() === null) throw new Error("Select a cell in the sheet first.");
    return grid;
  }

  return {
    name: "the workbench",
    hasSheet: true,
    hasCharts: false,
    printHint: "Press Print above the sheet.",
    sheetNames: async () => grid?.sheetNames() ?? [],
    showSheet: async (name) => ready().showSheet(name),
    theme: () => undefined,
    selection: async () => selectedCell(grid),
    onSelection(changed) {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    async readValues(references, beside) {
      const { sheet } = splitAddress(beside);
      return references.map((reference) => grid?.cells.read(reference, sheet ?? "") ?? null);
    },
    async insertFormula(formula) {
      const into = ready();
      into.write(formula);
      return selectedCell(into)?.address ?? "";
    },
    placeFor: async (block) => (grid === undefined || grid.selected() === null ? null : grid.placeFor(block)),
    writeBlock: async (block, chart) => ready().writeBlock(block, chart),
    addSheet: async (name, block, chart) => ready().cells.addSheet(name, block, chart),
    separators: async () => ENGLISH,
    recalculate: async () => ready().recalculate(),
    health: async () => [["Sheet", "the workbench on this machine; no Excel is needed"]],
    async *formulas() {
      for (const part of grid?.cells.formulas() ?? []) {
        yield part;
        await pause();
      }
    },
    replaceFormulas: async (changes, work) => replaceAll(ready(), changes, work),
    connect(opened) {
      grid = opened;
      opened.onChange(() => {
        for (const changed of listeners) changed();
      });
      for (const changed of listeners) changed();
    },
  };
}
