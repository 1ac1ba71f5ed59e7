import {
  ICommandService,
  type Injector,
  IUniverInstanceService,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";

const MOVE_RANGE = "sheet.mutation.move-range";

/** A cell's formula as it is written: its text, or the name of one that was filled down to it. */
interface FormulaPart {
  readonly f?: string | null;
  readonly si?: string | null;
}

type Cells = Readonly<Record<number, Readonly<Record<number, FormulaPart | null>> | null>>;

/** What the grid's model of formulas does before values are written. */
interface FormulaModel {
  updateFormulaData(unitId: string, sheetId: string, cells: Cells): unknown;
  getSheetFormulaData(unitId: string, sheetId: string): object;
  getFormulaData?: () => object;
  _getSheetFormulaIdMap?: () => object;
}

function isAnyShared(cells: Cells): boolean {
  return Object.values(cells).some((row) => Object.values(row ?? {}).some((cell) => Boolean(cell?.si)));
}

/** The formulas that stand in the places of some cells. */
function formulasIn(sheet: Worksheet, cells: Cells): Record<number, Record<number, FormulaPart>> {
  const matrix = sheet.getCellMatrix();
  const found: Record<number, Record<number, FormulaPart>> = {};
  for (const [row, columns] of Object.entries(cells)) {
    for (const column of Object.keys(columns ?? {})) {
      const { f } = (matrix.getValue(Number(row), Number(column)) ?? {}) as FormulaPart;
      if (!f) continue;
      found[Number(row)] ??= {};
      (found[Number(row)] as Record<number, FormulaPart>)[Number(column)] = { f };
    }
  }
  return found;
}

/** Sheets in which formulas were filled down, so that one cell names the formula of another. */
class SharedFormulas {
  private known = new WeakMap<Worksheet, boolean>();

  /** A range may have taken its formulas to another sheet. */
  forget(): void {
    this.known = new WeakMap();
  }

  /** @param written - Cells that are about to be written. */
  areIn(sheet: Worksheet, written: Cells): boolean {
    const areThere = this.known.get(sheet) ?? isAnyShared(sheet.getCellMatrix().getMatrix() as Cells);
    const areNow = areThere || isAnyShared(written);
    this.known.set(sheet, areNow);
    return areNow;
  }
}

/**
 * Lets the grid look only at the formulas that a written value concerns. As published it gathers every formula of the
 * workbook before each value, to see whether one of them was filled down from the cell.
 */
export function guardFormulas(injector: Injector): void {
  const model = injector.get(FormulaDataModel) as unknown as FormulaModel;
  const shared = new SharedFormulas();
  injector.get(ICommandService).onCommandExecuted(({ id }) => {
    if (id === MOVE_RANGE) shared.forget();
  });
  const update = model.updateFormulaData.bind(model);
  model.updateFormulaData = (unitId, sheetId, cells) => {
    const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId);
    const sheet = workbook?.getSheetBySheetId(sheetId);
    if (!sheet) return update(unitId, sheetId, cells);
    const areShared = shared.areIn(sheet, cells);
    const found = areShared ? model.getSheetFormulaData(unitId, sheetId) : formulasIn(sheet, cells);
    // Its own methods, which stand in the prototype, for the time of the call.
    model.getFormulaData = () => ({ [unitId]: { [sheetId]: found } });
    if (!areShared) model._getSheetFormulaIdMap = () => ({});
    try {
      return update(unitId, sheetId, cells);
    } finally {
      delete model.getFormulaData;
      delete model._getSheetFormulaIdMap;
    }
  };
}
