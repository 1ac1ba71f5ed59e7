/** The cell a smith has selected. */
export interface SelectedCell {
  /** With its sheet, as the host writes it: `Plan!D7`. */
  readonly address: string;
  /** The formula with its equals sign, or the constant as typed; empty for an empty cell. */
  readonly formula: string;
  /** What the cell shows; an error's code where it holds one. */
  readonly value: string;
}

/** High contrast is not among them: the browser reports it by itself (`forced-colors`). */
export type Theme = "light" | "dark";

/** Stops a subscription. */
export type Unsubscribe = () => void;

/**
 * All that the task pane may ask of the program it sits in. Excel and the workbench each have an
 * adapter; the pane itself names neither.
 */
export interface HostPort {
  /** As sentences call it: "Excel", "the workbench". */
  readonly name: string;

  /** False where there is no sheet: the pane then only shows figures. */
  readonly hasSheet: boolean;

  /** `undefined` leaves it to the browser's own setting. */
  theme(): Theme | undefined;

  /** The selected cell, or `null` where nothing is selected. */
  selection(): Promise<SelectedCell | null>;

  /**
   * Calls back after every change of selection.
   *
   * @returns A function that ends the subscription.
   */
  onSelection(changed: () => void): Unsubscribe;

  /**
   * Writes a formula into the selected cell.
   *
   * @param formula - In English function names with `,` between arguments and `.` as decimal point.
   * @returns The address written to.
   * @throws Error with a sentence for the smith where the cell cannot be written.
   */
  insertFormula(formula: string): Promise<string>;
}
