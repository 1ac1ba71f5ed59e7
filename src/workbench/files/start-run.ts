import type { Grid } from "../grid/grid";
import { openGrid } from "../grid/univer-grid";
import type { KeptRun } from "../kept/kept-store";
import { keptState } from "./kept-state";
import { OpenRun } from "./open-run";

export interface StartedRun {
  readonly grid: Grid;
  readonly run: OpenRun;
  /** False where what was kept could not be put back. */
  readonly isRestored: boolean;
}

/** Draws the grid with what was kept, or else with the demo run. */
export async function startRun(container: HTMLElement, kept: KeptRun | undefined): Promise<StartedRun> {
  // Where its file cannot be read any more the demo run stands there, and what was kept is set aside.
  const state = kept && (await keptState(kept).catch(() => undefined));
  const { grid, isRestored } = await openGrid(container, state);
  const run = new OpenRun(grid);
  if (kept !== undefined && isRestored) run.resume(kept);
  return { grid, run, isRestored };
}
