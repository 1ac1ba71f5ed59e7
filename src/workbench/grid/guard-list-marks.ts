import { DataValidationStatus, type Injector, LifecycleService } from "@univerjs/core";
import { SheetDataValidationModel } from "@univerjs/preset-sheets-data-validation";
import { drawRowOf } from "./draw-changed-rows";

/** A cell that was checked against the list it offers. */
interface Checked {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly row: number;
  readonly col: number;
  readonly status: DataValidationStatus;
}

interface Announcing {
  readonly _validStatusChange$: { next(checked: Checked): void };
}

/**
 * Draws anew after a check only the row in which a mark comes or goes. As published the grid lays out and draws
 * everything once more after every check, and each edit has one.
 */
export function guardListMarks(injector: Injector): void {
  let isGuarded = false;
  injector.get(LifecycleService).lifecycle$.subscribe(() => {
    if (isGuarded || !injector.has(SheetDataValidationModel)) return;
    isGuarded = true;
    guard(injector.get(SheetDataValidationModel) as unknown as Announcing, injector);
  });
}

function guard({ _validStatusChange$: announced }: Announcing, injector: Injector): void {
  const marked = new Set<string>();
  announced.next = (checked) => {
    const { unitId, subUnitId, row, col, status } = checked;
    const cell = `${unitId} ${subUnitId} ${row} ${col}`;
    const wasMarked = marked.has(cell);
    const isMarked = status === DataValidationStatus.INVALID;
    if (isMarked) marked.add(cell);
    else marked.delete(cell);
    if (isMarked !== wasMarked) drawRowOf(injector, checked);
  };
}
