import type { HostPort, SelectedCell } from "../host/port";
import type { Grid } from "./grid";

export interface GridPort extends HostPort {
  /** The pane is up before the grid is: hands the grid over once it stands. */
  connect(grid: Grid): void;
}

function quotedSheet(name: string): string {
  return /^\w+$/.test(name) ? name : `'${name.replaceAll("'", "''")}'`;
}

/** What the pane may ask of the workbench. */
export function gridPort(): GridPort {
  let grid: Grid | undefined;
  const listeners = new Set<() => void>();

  function selected(): SelectedCell | null {
    const cell = grid?.selected() ?? null;
    if (cell === null) return null;
    const { sheet, address, formula, value } = cell;
    return { address: `${quotedSheet(sheet)}!${address}`, formula, value };
  }

  return {
    name: "the workbench",
    hasSheet: true,
    theme: () => "light",
    selection: async () => selected(),
    onSelection(changed) {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    async insertFormula(formula) {
      const cell = selected();
      if (grid === undefined || cell === null) throw new Error("Select a cell in the sheet first.");
      grid.write(formula);
      return cell.address;
    },
    connect(ready) {
      grid = ready;
      ready.onChange(() => {
        for (const changed of listeners) changed();
      });
    },
  };
}
