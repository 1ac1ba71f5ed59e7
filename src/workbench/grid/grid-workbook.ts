import type { ICellData, IWorkbookData } from "@univerjs/core";
import { cellName } from "../../formula/addresses";
import type { WorkbookData } from "../../workbook/model/workbook-data";
import type { HeldWorkbook } from "../calculation/messages";
import { workbookOfSnapshot } from "../files/read-snapshot";
import { snapshotOf } from "../files/write-snapshot";
import { type EditedCell, EditedCells } from "./edited-cells";
import { isEdit, isRearrangement } from "./grid-edits";
import type { StartedGrid } from "./grid-start";
import { heldSnapshot, heldWorkbook } from "./held-cells";

/** All sheets as the grid holds them, fit to be kept by the browser. */
export interface GridState {
  readonly snapshot: IWorkbookData;
  /** True where rows, columns, sheets or tables were added, moved or removed. */
  readonly isRearranged: boolean;
}

/** A text that somebody is typing into a cell and has not entered. */
export interface Draft {
  readonly sheet: string;
  readonly address: string;
  readonly text: string;
}

/** What somebody is typing, or `null` once it was entered or dropped. */
export type TypingListener = (draft: Draft | null) => void;

/** The workbook of the grid as a whole: taken out, put in, watched for changes. */
export class GridWorkbook {
  private readonly editListeners: (() => void)[] = [];
  private readonly typingListeners: TypingListener[] = [];
  private readonly edited = new EditedCells();
  private isRearranged = false;
  private shown = 0;

  constructor(private readonly started: StartedGrid) {
    const { api } = started;
    api.addEvent(api.Event.CommandExecuted, (command) => {
      if (!isEdit(command)) return;
      this.isRearranged ||= isRearrangement(command);
      this.edited.note(command);
      for (const edited of this.editListeners) edited();
    });
    api.addEvent(api.Event.SheetEditChanging, ({ worksheet, row, column, value }) => {
      const text = value.toPlainText().replace(/\r?\n$/, "");
      this.tell({ sheet: worksheet.getSheetName(), address: cellName(row, column), text });
    });
    api.addEvent(api.Event.SheetEditEnded, () => this.tell(null));
  }

  /** Calls back after every change that a save would keep. */
  onEdit(edited: () => void): void {
    this.editListeners.push(edited);
  }

  /** Calls back with every letter that is typed into a cell of the picture. */
  onTyping(typed: TypingListener): void {
    this.typingListeners.push(typed);
  }

  state(): GridState {
    return { snapshot: this.current.save(), isRearranged: this.isRearranged };
  }

  /** Takes note of edits from now on, until another workbook stands here. */
  followEdits(): void {
    this.edited.begin();
  }

  /** The cells that were edited since; nothing where more than cells became another. */
  editedCells(): readonly EditedCell[] | undefined {
    if (!this.edited.areAll) return undefined;
    const workbook = this.current.getWorkbook();
    const styles = workbook.getStyles();
    return this.edited.cells((sheetId, row, column) => {
      const data = workbook.getSheetBySheetId(sheetId)?.getCellMatrix().getValue(row, column);
      // Styles have their names in the workbook as it was kept; this one may be a new one.
      return data ? ({ ...data, s: styles.get(data.s) ?? null } as ICellData) : null;
    });
  }

  contents(): WorkbookData {
    const workbook = this.current;
    return workbookOfSnapshot(workbook.save(), (sheetId, row, column) =>
      this.started.calculation.results.spillOf({ sheetId, row, column }),
    );
  }

  /** Puts a workbook in the place of the present one; formulas that come without a result are worked out. */
  show(workbook: WorkbookData): void {
    const snapshot = snapshotOf(workbook);
    this.replace({ snapshot, isRearranged: false }, heldWorkbook(workbook, snapshot.sheetOrder));
  }

  /** Puts back what `state` gave. @throws Error where it is no workbook. */
  restore(state: GridState): void {
    const { sheets, sheetOrder } = state.snapshot;
    const isWhole = sheetOrder.length > 0 && sheetOrder.every((id) => sheets[id] !== undefined);
    if (!isWhole) throw new Error("What was kept holds no sheets.");
    this.replace(state, heldSnapshot(state.snapshot));
  }

  private get current() {
    const workbook = this.started.api.getActiveWorkbook();
    if (workbook === null) throw new Error("the grid has no workbook");
    return workbook;
  }

  private replace({ snapshot, isRearranged }: GridState, held: HeldWorkbook): void {
    const { api, calculation } = this.started;
    this.shown += 1;
    this.edited.forget();
    const before = api.getActiveWorkbook()?.getId();
    if (before !== undefined) api.disposeUnit(before);
    // An id of its own: what the grid still has to do for the workbook before must not find this one.
    api.createWorkbook({ ...snapshot, id: `workbook-${this.shown}` });
    calculation.begin(held);
    this.isRearranged = isRearranged;
  }

  private tell(draft: Draft | null): void {
    for (const typed of this.typingListeners) typed(draft);
  }
}
