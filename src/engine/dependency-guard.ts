import type { Injector } from "@univerjs/core";
import { IDependencyManagerService, type IFormulaDependencyTree } from "@univerjs/engine-formula";

/** What a formula reads, as one word to compare by. */
function signatureOf({ rangeList }: IFormulaDependencyTree): string {
  return rangeList
    .map(({ unitId, sheetId, range: { startRow, endRow, startColumn, endColumn } }) =>
      JSON.stringify([unitId, sheetId, startRow, endRow, startColumn, endColumn]),
    )
    .join();
}

/** Removals after which it is not known which formulas still stand in the engine's index. */
const SWEEPING = [
  "reset",
  "removeOtherFormulaDependency",
  "clearOtherFormulaDependency",
  "removeFeatureFormulaDependency",
  "clearFeatureFormulaDependency",
  "clearFormulaDependency",
  "removeFormulaDependencyByDefinedName",
] as const;

type Any = (...given: readonly unknown[]) => void;

/**
 * Keeps the engine's index of what formulas read from growing without end: at every calculation the engine enters
 * each formula into it anew, although it stands there already.
 */
export function guardDependencies(injector: Injector): void {
  const manager = injector.get(IDependencyManagerService);
  const entered = new Map<number, string>();
  const enter = manager.addDependencyRTreeCache.bind(manager);
  manager.addDependencyRTreeCache = (tree) => {
    const signature = signatureOf(tree);
    if (entered.get(tree.treeId) === signature) return;
    entered.set(tree.treeId, signature);
    enter(tree);
  };
  const remove = manager.removeFormulaDependency.bind(manager);
  manager.removeFormulaDependency = (unitId, sheetId, row, column) => {
    const treeId = manager.getFormulaDependency(unitId, sheetId, row, column);
    if (treeId !== null && treeId !== undefined) entered.delete(treeId);
    remove(unitId, sheetId, row, column);
  };
  const methods = manager as unknown as Record<(typeof SWEEPING)[number], Any>;
  for (const name of SWEEPING) {
    const sweep = methods[name].bind(manager);
    methods[name] = (...given) => {
      entered.clear();
      sweep(...given);
    };
  }
}
