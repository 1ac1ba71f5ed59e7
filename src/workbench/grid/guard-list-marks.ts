import { DataValidationStatus, type Injector, LifecycleService } from "@univerjs/core";
import { SheetDataValidationModel } from "@univerjs/preset-sheets-data-validation";

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
 * Draws the sheet anew after a check only where a mark comes or goes. As published the grid draws everything once
 * more after every check, and each edit has one.
 */
export function guardListMarks(injector: Injector): void {
  let isGuarded = false;
  injector.get(LifecycleService).lifecycle$.subscribe(() => {
    if (isGuarded || !injector.has(SheetDataValidationModel)) return;
    isGuarded = true;
    guard(injector.get(SheetDataValidationModel) as unknown as Announcing);
  });
}

function guard({ _validStatusChange$: announced }: Announcing): void {
  const marked = new Set<string>();
  const next = announced.next.bind(announced);
  announced.next = (checked) => {
    const { unitId, subUnitId, row, col, status } = checked;
    const cell = `${unitId} ${subUnitId} ${row} ${col}`;
    const wasMarked = marked.has(cell);
    const isMarked = status === DataValidationStatus.INVALID;
    if (isMarked) marked.add(cell);
    else marked.delete(cell);
    if (isMarked !== wasMarked) next(checked);
  };
}
