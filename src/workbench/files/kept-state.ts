import { readWorkbook } from "../../workbook/file/read/read-workbook";
import { withCells } from "../grid/edited-cells";
import type { GridState } from "../grid/grid-workbook";
import type { KeptRun } from "../kept/kept-store";
import { snapshotOf } from "./write-snapshot";

/**
 * The workbook of kept work in the form of the grid.
 *
 * @throws FileRefusal where its file can no longer be opened; Error where nothing of it was kept.
 */
export async function keptState({ grid, file, cells = [] }: KeptRun): Promise<GridState> {
  if (grid !== undefined) return grid;
  if (file === undefined) throw new Error("What was kept holds no workbook.");
  const snapshot = snapshotOf((await readWorkbook(file)).workbook);
  return { snapshot: withCells(snapshot, cells), isRearranged: false };
}
