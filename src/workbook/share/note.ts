import type { StoredCell } from "../file/read/stored-sheet";

/** A note to lay on a cell. */
export interface Note {
  readonly cell: Pick<StoredCell, "row" | "column">;
  readonly text: string;
}
