import type { Injector } from "@univerjs/core";
import { IUniverInstanceService, type Workbook } from "@univerjs/core";
import {
  FormulaDataModel,
  ICalculateFormulaService,
  IFormulaDependencyGenerator,
} from "@univerjs/engine-formula";
import { afterEach, beforeEach, expect, test } from "vitest";
import { calculateOnce } from "../../src/engine/calculate-workbook";
import { type Headless, startEngine } from "../../src/engine/headless";
import type { Results } from "../../src/engine/results";
import { watchResults } from "../../src/engine/watch";
import { UNIT, workbookData } from "../../src/engine/workbook-input";
import { typedSheet } from "./typed-cell";

const SHEET = "sheet-1";
let engine: Headless;
let results: Results;

/** Formulas taken apart since the last look, to find out which cells they read. */
let read: string[];

function watchReading(injector: Injector): void {
  const generator = injector.get(IFormulaDependencyGenerator) as unknown as {
    _includeTree(tree: { formula: string }, node: unknown): boolean;
  };
  const include = generator._includeTree.bind(generator);
  generator._includeTree = (tree, node) => {
    if (node !== null) read.push(tree.formula);
    return include(tree, node);
  };
}

beforeEach(async () => {
  read = [];
  const sheet = typedSheet("Plan", [
    [1, "=A1*2", "=B1+10", "=SUM(A1:A3)"],
    [5, "=A2*2", "=INDIRECT(A4)", "=OFFSET(A1,A1,0)"],
    [7, "=RAND()", "=C2+100"],
    ["A1"],
  ]);
  engine = startEngine(workbookData({ sheets: [sheet] }), []);
  watchReading(engine.injector);
  results = watchResults(engine.injector);
  await calculateOnce(engine.injector);
});

afterEach(() => engine.dispose());

const at = (row: number, column: number) => results.at({ unitId: UNIT, sheetId: SHEET, row, column });

/** Changes one cell and works out what depends on it, as the grid does after an edit. */
async function edit(row: number, column: number, value: number | string): Promise<void> {
  const { injector } = engine;
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(UNIT);
  workbook?.getSheetBySheetId(SHEET)?.getCellMatrix().setValue(row, column, { v: value });
  const model = injector.get(FormulaDataModel);
  const service = injector.get(ICalculateFormulaService);
  const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
  read = [];
  await new Promise<void>((resolve) => {
    const done = service.executionCompleteListener$.subscribe(() => {
      done.unsubscribe();
      resolve();
    });
    void service.execute({
      formulaData: model.getFormulaData(),
      arrayFormulaCellData: model.getArrayFormulaCellData(),
      arrayFormulaRange: model.getArrayFormulaRange(),
      forceCalculate: false,
      dirtyRanges: [{ unitId: UNIT, sheetId: SHEET, range }],
      dirtyNameMap: {},
      dirtyDefinedNameMap: {},
      dirtyUnitFeatureMap: {},
      dirtyUnitOtherFormulaMap: {},
    });
  });
}

test("an edit works out its dependents and reads no formula again whose cells are fixed", async () => {
  await edit(0, 0, 3);
  expect([at(0, 1), at(0, 2), at(0, 3)]).toEqual([{ value: 6 }, { value: 16 }, { value: 15 }]);
  // The engine numbers the first formula of a workbook 0, takes that for no number and reads it at every change.
  for (const fixed of ["=B1+10", "=SUM(A1:A3)", "=A2*2", "=C2+100"]) expect(read).not.toContain(fixed);
  await edit(1, 0, 50);
  expect([at(0, 3), at(1, 1)]).toEqual([{ value: 60 }, { value: 100 }]);
});

test("formulas whose cells move with values follow them", async () => {
  expect([at(1, 2), at(1, 3), at(2, 2)]).toEqual([{ value: 1 }, { value: 5 }, { value: 101 }]);
  await edit(3, 0, "A3");
  expect([at(1, 2), at(2, 2)]).toEqual([{ value: 7 }, { value: 107 }]);
  await edit(2, 0, 9);
  expect([at(1, 2), at(2, 2)]).toEqual([{ value: 9 }, { value: 109 }]);
  await edit(0, 0, 2);
  expect(at(1, 3)).toEqual({ value: 9 });
});

test("a volatile function is worked out at every change", async () => {
  const before = at(2, 1);
  await edit(0, 0, 4);
  expect(at(2, 1)).not.toEqual(before);
});
