import type { Injector } from "@univerjs/core";
import { IEditorBridgeService } from "@univerjs/preset-sheets-core";

/**
 * Keeps what is being typed. As published, a result or an earlier entry that arrives in the cell under the cursor
 * puts the cell's old content in place of the letters typed so far, and the rest of them in front of it.
 */
export function guardEditor(injector: Injector): void {
  const bridge = injector.get(IEditorBridgeService);
  const refresh = bridge.refreshEditCellState.bind(bridge);
  bridge.refreshEditCellState = () => {
    if (!bridge.isVisible().visible) refresh();
  };
}
