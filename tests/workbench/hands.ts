import type { Page } from "playwright-core";
import { readCellName } from "../../src/formula/addresses";

const KEY_MS = 30;
/** How often a press on the grid is tried before it has drawn its sheet. */
const MAX_PRESSES = 60;

/** Hands at the keyboard: keys go to whatever has the focus, and where the cell is, the hands know by themselves. */
export class Hands {
  private at = { row: 0, column: 0 };
  /** Where the entries of a row that end with Tab began: Enter leads back below that cell, as in any spreadsheet. */
  private rowBegan: number | undefined;

  constructor(private readonly page: Page) {}

  /** A press on a cell of the picture gives the grid the focus, once it has drawn its sheet. */
  async settle(): Promise<void> {
    for (let press = 0; press < MAX_PRESSES && !(await this.holdsTheGrid()); press += 1) {
      const grid = await this.page.locator("#grid").boundingBox();
      await this.page.mouse.click((grid?.x ?? 0) + 90, (grid?.y ?? 0) + 230);
      await this.page.waitForTimeout(500);
    }
    this.rowBegan = undefined;
    this.at = readCellName(await this.page.inputValue("#cell-address")) ?? this.at;
  }

  private holdsTheGrid(): Promise<boolean> {
    return this.page.evaluate(() => document.activeElement?.getAttribute("contenteditable") === "true");
  }

  async press(key: string): Promise<void> {
    await this.page.keyboard.press(key);
    await this.page.waitForTimeout(KEY_MS);
  }

  async go(row: number, column: number): Promise<void> {
    const times = async (key: string, count: number) => {
      for (let step = 0; step < count; step += 1) await this.press(key);
    };
    await times("ArrowDown", row - this.at.row);
    await times("ArrowUp", this.at.row - row);
    await times("ArrowRight", column - this.at.column);
    await times("ArrowLeft", this.at.column - column);
    if (row !== this.at.row || column !== this.at.column) this.rowBegan = undefined;
    this.at = { row, column };
  }

  async type(text: string, end: "Enter" | "Tab"): Promise<void> {
    for (const letter of text) await this.press(letter === " " ? "Space" : letter);
    await this.press(end);
    const { row, column } = this.at;
    if (end === "Tab") this.rowBegan ??= column;
    this.at = end === "Tab" ? { row, column: column + 1 } : { row: row + 1, column: this.rowBegan ?? column };
    if (end === "Enter") this.rowBegan = undefined;
  }
}
