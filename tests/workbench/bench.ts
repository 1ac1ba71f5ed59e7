import type { Page } from "playwright-core";
import { expect } from "vitest";
import { columnKeys, lineCell } from "../../src/workbook/sheets/lines-sheet";
import { FIRST_ROW } from "../../src/workbook/sheets/parts/table-sheet";
import { stepOf } from "../../src/workbook/sheets/run-progress";
import { demoRun } from "../../src/workbook/sheets/run-r07/run";

const AFTER_LAST = FIRST_ROW + demoRun.lines.length;

/** Works the page as a smith without a mouse does: through the two fields and the text below them. */
export class Bench {
  constructor(readonly page: Page) {}

  /** Selects a cell, and once more where the grid, some time after a new sheet or an undo, selects one itself. */
  async goTo(address: string): Promise<void> {
    const shown = () => this.page.inputValue("#cell-address");
    const asked = async () => {
      await this.page.fill("#cell-address", address);
      await this.page.press("#cell-address", "Enter");
      // Two texts can meet in the field where the grid selects a cell while it is being filled.
      return (await this.result()).startsWith("This sheet has no cell") ? "" : shown();
    };
    await expect.poll(asked, { interval: 500 }).toBe(address);
    await expect.poll(shown).toBe(address);
  }

  async enter(address: string, text: string): Promise<void> {
    await this.goTo(address);
    await this.page.fill("#cell-content", text);
    await this.page.press("#cell-content", "Enter");
  }

  async result(): Promise<string> {
    return (await this.page.textContent("#cell-result")) ?? "";
  }

  /** Waits until a cell says what is expected. */
  async says(address: string, expected: string | RegExp): Promise<void> {
    await this.goTo(address);
    const result = expect.poll(() => this.result(), { message: address });
    await (typeof expected === "string" ? result.toBe(expected) : result.toMatch(expected));
  }

  async press(name: string): Promise<void> {
    await this.page.getByRole("button", { name, exact: true }).click();
  }

  /** Adds a sheet and waits until it is the one shown. */
  async newSheet(): Promise<void> {
    const shown = this.page.locator('#sheets button[aria-current="true"]');
    const before = await shown.textContent();
    await this.press("New sheet");
    await expect.poll(() => shown.textContent()).not.toBe(before);
    await expect.poll(() => this.page.inputValue("#cell-address")).toBe("A1");
  }

  /** Shows a sheet by its tab. */
  async sheet(name: string): Promise<void> {
    const tab = this.page.locator("#sheets button", { hasText: new RegExp(`^${name}$`) });
    const step = this.page.locator(`#steps [data-step="${stepOf(name) ?? "Other sheets"}"]`);
    // A run that was just opened may show another step while the tab is looked for.
    const chosen = async () => {
      if (!(await tab.isVisible())) await step.click();
      await tab.click({ timeout: 5000 }).catch(() => undefined);
      return tab.getAttribute("aria-current");
    };
    await expect.poll(chosen).toBe("true");
  }

  /** The active sheet as the page's own table gives it, without the headings of rows and columns. */
  async table(): Promise<string[][]> {
    const toggle = this.page.locator("#as-table");
    if ((await toggle.getAttribute("aria-pressed")) === "false") await toggle.click();
    const rows = await this.page
      .locator("#table tbody tr")
      .evaluateAll((found) =>
        found.map((row) => [...row.querySelectorAll("td")].map((cell) => cell.textContent)),
      );
    await toggle.click();
    return rows;
  }

  /** Where the grid's picture stands on the page. */
  async picture(): Promise<{ x: number; y: number; width: number; height: number }> {
    const box = await this.page.locator("#grid").boundingBox();
    if (box === null) throw new Error("the grid is not shown");
    return box;
  }

  /** The lines of the run as the page shows them, by column. */
  async lines(): Promise<Record<string, string>[]> {
    const rows = (await this.table()).slice(FIRST_ROW, AFTER_LAST);
    return rows.map((row) => Object.fromEntries(columnKeys.map((key, column) => [key, row[column] ?? ""])));
  }

  async line(index: number): Promise<Record<string, string>> {
    return (await this.lines())[index] ?? {};
  }

  /** Waits until the run has been worked out. */
  settled(): Promise<void> {
    return this.says(lineCell(0, "temperC"), /^\d+$/);
  }

  /** Clicks an empty cell below the run, as a smith would before typing, and gives its address. */
  async clickBelowTheRun(): Promise<string> {
    const before = await this.page.inputValue("#cell-address");
    // A notice that was just closed moves the grid: a click on its way is one on nothing, and is made again.
    const clicked = async () => {
      const { x, y, height } = await this.picture();
      await this.page.mouse.click(x + 300, y + height - 22);
      await this.page.waitForTimeout(500);
      return this.page.inputValue("#cell-address");
    };
    await expect.poll(clicked, { interval: 1000 }).not.toBe(before);
    await expect.poll(() => this.result()).toBe("Empty");
    return this.page.inputValue("#cell-address");
  }
}
