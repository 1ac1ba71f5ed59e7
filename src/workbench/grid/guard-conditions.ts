import type { Injector } from "@univerjs/core";
import { ConditionalFormattingViewModel } from "@univerjs/preset-sheets-conditional-formatting";

/** What the grid remembers of a rule: what it came to in each cell. */
interface Remembered {
  _cellCache: { clear(): void };
  _ensureCalculateUnitManager(
    unitId: string,
    sheetId: string,
  ): { get(ruleId: string): { resetPreComputingCache(): void } | undefined };
}

/**
 * Lets rules that colour cells forget what they came to as soon as a value changes, so that the drawing that the
 * value asks for shows it. As published the grid waits a tenth of a second and then draws everything once more.
 */
export function guardConditions(injector: Injector): void {
  const model = injector.get(ConditionalFormattingViewModel);
  const remembered = model as unknown as Remembered;
  model.markRuleDirty = (unitId, sheetId, ruleId) => {
    remembered._cellCache.clear();
    remembered._ensureCalculateUnitManager(unitId, sheetId).get(ruleId)?.resetPreComputingCache();
  };
}
