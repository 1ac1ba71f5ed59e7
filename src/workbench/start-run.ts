import type { Grid } from "./grid";
import type { KeptRun } from "./kept-store";
import { OpenRun } from "./open-run";
import { openGrid } from "./univer-grid";

export interface StartedRun {
  readonly grid: Grid;
  readonly run: OpenRun;
  /** False where what was kept could not be put back. */
  readonly isRestored: boolean;
}

/** Draws the grid with what was kept, or else with the demo run. */
export async function startRun(container: HTMLElement, kept: KeptRun | undefined): Promise<StartedRun> {
  const { grid, isRestored } = await openGrid(container, kept?.grid);
  const run = new OpenRun(grid);
  if (kept !== undefined && isRestored) run.resume(kept);
  return { grid, run, isRestored };
}
