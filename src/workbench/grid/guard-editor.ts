import type { Injector } from "@univerjs/core";
import { IEditorBridgeService } from "@univerjs/preset-sheets-core";

/**
 * Keeps what is being typed, and takes the content of a cell into its editor once somebody types there. As published,
 * a result or an earlier entry that arrives in the cell under the cursor puts the cell's old content in place of the
 * letters typed so far, and the rest of them in front of it; and every entry, with its results once more, is laid out
 * in the editor although nobody sees it.
 */
export function guardEditor(injector: Injector): void {
  const bridge = injector.get(IEditorBridgeService);
  const refresh = bridge.refreshEditCellState.bind(bridge);
  const choose = bridge.setEditCell.bind(bridge);
  const show = bridge.changeVisible.bind(bridge);
  let isStale = false;
  bridge.refreshEditCellState = () => {
    isStale = true;
  };
  bridge.setEditCell = (cell) => {
    isStale = false;
    choose(cell);
  };
  bridge.changeVisible = (shown) => {
    if (isStale && shown.visible && !bridge.isVisible().visible) {
      isStale = false;
      refresh();
    }
    show(shown);
  };
}
