import type { Injector } from "@univerjs/core";
import { IEditorBridgeService, TextRange } from "@univerjs/preset-sheets-core";

type Cell = Parameters<IEditorBridgeService["setEditCell"]>[0];

const isSame = (one: Cell | undefined, { unitId, sheetId, primary, scene }: Cell) =>
  one?.unitId === unitId &&
  one.sheetId === sheetId &&
  one.scene === scene &&
  one.primary.actualRow === primary.actualRow &&
  one.primary.actualColumn === primary.actualColumn;

const hasKeyboard = () => document.activeElement?.getAttribute("data-u-comp") === "editor";

/**
 * Keeps what is being typed, and takes the content of a cell into its editor once somebody types there. As published,
 * a result or an earlier entry that arrives in the cell under the cursor puts the cell's old content in place of the
 * letters typed so far, and the rest of them in front of it; and every entry, with its results once more, is laid out
 * in the editor although nobody sees it, as is every selected cell twice.
 */
export function guardEditor(injector: Injector): void {
  const bridge = injector.get(IEditorBridgeService);
  const refresh = bridge.refreshEditCellState.bind(bridge);
  const choose = bridge.setEditCell.bind(bridge);
  const show = bridge.changeVisible.bind(bridge);
  let chosen: Cell | undefined;
  let isStale = false;
  bridge.refreshEditCellState = () => {
    isStale = true;
  };
  bridge.setEditCell = (cell) => {
    isStale = isSame(chosen, cell) && hasKeyboard();
    if (isStale) return;
    chosen = cell;
    choose(cell);
  };
  bridge.changeVisible = (shown) => {
    if (isStale && shown.visible && !bridge.isVisible().visible) {
      isStale = false;
      refresh();
    }
    show(shown);
  };
  restCursor(() => bridge.isVisible().visible);
}

/** The cursor of the editor blinks while it can be seen: each time the editor is drawn. */
function restCursor(isSeen: () => boolean): void {
  const cursor = TextRange.prototype as unknown as { _anchorBlink(): void };
  const { _anchorBlink: blink } = cursor;
  cursor._anchorBlink = function () {
    if (isSeen()) blink.call(this);
  };
}
