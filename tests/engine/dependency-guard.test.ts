import type { Injector } from "@univerjs/core";
import { beforeEach, expect, test, vi } from "vitest";
import { guardDependencies } from "../../src/engine/dependency-guard";

const enter = vi.fn();
const nothing = () => undefined;

/** Stands in for the engine's index of what formulas read. */
function index() {
  return {
    addDependencyRTreeCache: enter as (tree: unknown) => void,
    getFormulaDependency: () => 7,
    removeFormulaDependency: nothing as (...given: unknown[]) => void,
    reset: nothing,
    removeOtherFormulaDependency: nothing,
    clearOtherFormulaDependency: nothing,
    removeFeatureFormulaDependency: nothing,
    clearFeatureFormulaDependency: nothing,
    clearFormulaDependency: nothing,
    removeFormulaDependencyByDefinedName: nothing,
  };
}

const formula = (endRow: number, treeId = 7) => ({
  treeId,
  rangeList: [{ unitId: "u", sheetId: "s", range: { startRow: 0, endRow, startColumn: 0, endColumn: 0 } }],
});

let guarded: ReturnType<typeof index>;

beforeEach(() => {
  enter.mockClear();
  guarded = index();
  guardDependencies({ get: () => guarded } as unknown as Injector);
});

test("a formula that reads the same as before is not entered again", () => {
  for (let calculation = 0; calculation < 5; calculation += 1) guarded.addDependencyRTreeCache(formula(3));
  expect(enter).toHaveBeenCalledTimes(1);
  guarded.addDependencyRTreeCache(formula(3, 8));
  expect(enter).toHaveBeenCalledTimes(2);
});

test.each([
  ["it reads other cells", () => undefined, 4],
  ["it was taken out", () => guarded.removeFormulaDependency("u", "s", 0, 0), 3],
  ["the index was emptied", () => guarded.reset(), 3],
  ["formulas of its sheet were taken out", () => guarded.clearFormulaDependency(), 3],
])("a formula is entered again once %s", (_, happens, endRow) => {
  guarded.addDependencyRTreeCache(formula(3));
  happens();
  guarded.addDependencyRTreeCache(formula(endRow));
  expect(enter).toHaveBeenCalledTimes(2);
});
