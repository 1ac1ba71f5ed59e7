import { beforeEach, describe, expect, test } from "vitest";
import { lineCell } from "../../src/workbook/sheets/lines-sheet";
import { FIRST_ROW } from "../../src/workbook/sheets/parts/table-sheet";
import type { Bench } from "./bench";
import { type Workbench, workbenchPages } from "./session";

const workbench = workbenchPages("for all tests");
let opened: Workbench;
let bench: Bench;

beforeEach(async () => {
  opened = workbench();
  ({ bench } = opened);
  await bench.settled();
});

const { page } = { page: () => opened.page };
const steels = async () => (await bench.lines()).map(({ steel }) => steel);
const names = async () => (await bench.lines()).map(({ line }) => line);
const notice = () => page().textContent("#notice-words");

async function inRows(command: string): Promise<void> {
  await bench.press("Rows");
  await page().getByRole("menuitem", { name: command }).click();
}

/** Gives the grid the keyboard, as a click on the selected cell would. */
const keyboardToGrid = () =>
  page().evaluate(() => document.querySelector<HTMLElement>('#grid [data-u-comp="editor"]')?.focus());

/** Pastes what a program would have put on the clipboard: the event that a browser makes of Ctrl+V. */
async function paste(text: string, html = ""): Promise<void> {
  await keyboardToGrid();
  await page().evaluate(
    ([plain, rich]) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData("text/plain", plain ?? "");
      if (rich) clipboardData.setData("text/html", rich);
      document.activeElement?.dispatchEvent(
        new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }),
      );
    },
    [text, html],
  );
}

describe("the look of cells", () => {
  const isBold = () => page().getAttribute("#bold", "aria-pressed");

  test("Ctrl+B makes a cell bold, the button tells so, undo takes it back", async () => {
    await bench.goTo(lineCell(1, "item"));
    await expect.poll(isBold).toBe("false");
    await keyboardToGrid();
    await page().keyboard.press("Control+b");
    await expect.poll(isBold).toBe("true");
    await bench.press("Undo");
    await expect.poll(isBold).toBe("false");
  });

  test("a number format is chosen, shown at once, and undone", async () => {
    const cell = lineCell(0, "length");
    await bench.says(cell, "210");
    await page().selectOption("#number-format", "0.00");
    await bench.says(cell, "210.00");
    expect(await page().inputValue("#cell-content")).toBe("210");
    await bench.press("Undo");
    await bench.says(cell, "210");
  });

  test("what is pasted from elsewhere takes the look, the list and the format of its cell", async () => {
    const look = () => page().inputValue("#number-format");
    const cell = lineCell(1, "width");
    await bench.says(cell, "34.0");
    await expect.poll(look).toBe("0.0");
    await paste(
      "35.5\t3.25",
      '<table><tr><td style="background:#f00;font-weight:bold">35.5</td><td style="background:#f00">3.25</td></tr></table>',
    );
    await bench.says(cell, "35.5");
    // Thickness is shown to a tenth, as its column is.
    await bench.says(lineCell(1, "thickness"), /^3\.[23]$/);
    await bench.goTo(cell);
    await expect.poll(look).toBe("0.0");
    expect(await isBold()).toBe("false");
    await bench.press("Undo");
    await bench.says(cell, "34.0");
  });
});

test("an editor that is opened over a cell holds what stands there now, however it came there", async () => {
  const cell = lineCell(1, "item");
  const press = async (...keys: string[]) => {
    for (const key of keys) await page().keyboard.press(key, { delay: 30 });
  };
  const before = (await bench.line(1)).item ?? "";
  await bench.enter(cell, "Tern");
  await bench.says(cell, "Tern");
  await keyboardToGrid();
  await press("F2", "s", "Enter");
  await bench.says(cell, "Terns");
  await keyboardToGrid();
  await press("Delete");
  await bench.says(cell, "Empty");
  await keyboardToGrid();
  await press("F2", "A", "Enter");
  await bench.says(cell, "A");
  await bench.press("Undo");
  await bench.says(cell, "Empty");
  await bench.press("Undo");
  await bench.says(cell, "Terns");
  await keyboardToGrid();
  await press("F2", "Backspace", "Enter");
  await bench.says(cell, "Tern");
  await bench.enter(cell, before);
  await bench.says(cell, before);
});

describe("rows of a table", () => {
  test("a row put in has its formulas, the other sheets follow, and undo takes it out", async () => {
    const before = await bench.lines();
    await bench.goTo(lineCell(2, "steel"));
    await inRows("Insert a row here");
    await bench.says(lineCell(2, "line"), "Empty");
    await bench.says(lineCell(3, "line"), before[2]?.line ?? "");
    await bench.says(lineCell(3, "temperC"), before[2]?.temperC ?? "");
    await bench.sheet("Recipe");
    await bench.says("A8", before[2]?.line ?? "");
    await bench.sheet("Lines");
    // A line typed into it is worked out like any other.
    for (const [key, text] of [
      ["line", "L9"],
      ["use", "Machete light"],
      ["steel", "1075"],
      ["quench", "fast oil"],
      ["thickness", "2.5"],
    ] as const)
      await bench.enter(lineCell(2, key), text);
    await bench.says(lineCell(2, "temperC"), /^\d+$/);
    await bench.sheet("Recipe");
    await bench.says("A7", "L9");
    for (let step = 0; step < 6; step += 1) await bench.press("Undo");
    await bench.sheet("Lines");
    await expect.poll(() => bench.lines()).toEqual(before);
  });

  test("the menu of the right button puts a row in with its formulas too", async () => {
    const before = await bench.lines();
    const { x, y, height } = await bench.picture();
    await bench.goTo(lineCell(0, "steel"));
    await page().mouse.click(x + 15, y + height / 2, { button: "right" });
    await expect.poll(() => page().inputValue("#cell-address")).toMatch(/^A\d+$/);
    const address = await page().inputValue("#cell-address");
    const at = Number(/^A(\d+)$/.exec(address)?.[1]) - 1 - FIRST_ROW;
    const line = before[at];
    expect(line?.line, address).toMatch(/^L\d$/);
    const item = page().getByText("rows above", { exact: false }).last();
    // Beside the field for the number: a press on that one only lets the number be typed.
    await item.click({ position: { x: 3, y: 8 } });
    const name = (row: number) => lineCell(row, "line");
    await bench.says(name(at), "Empty");
    await bench.says(name(at + 1), line?.line ?? "");
    await bench.says(lineCell(at + 1, "temperC"), line?.temperC ?? "");
    await bench.sheet("Recipe");
    await bench.says(`A${at + 1 + FIRST_ROW + 1}`, line?.line ?? "");
    await bench.press("Undo");
    await bench.sheet("Lines");
    await expect.poll(() => bench.lines()).toEqual(before);
  });

  test("lines sorted by a column keep what belongs to them, and undo brings the order back", async () => {
    const before = await bench.lines();
    await bench.goTo(lineCell(0, "good"));
    await inRows("Sort by this column, A to Z");
    const goods = before.map(({ good }) => Number(good)).sort((a, b) => a - b);
    await expect.poll(async () => (await bench.lines()).map(({ good }) => Number(good))).toEqual(goods);
    const byName = (rows: Record<string, string>[]) => new Map(rows.map((row) => [row.line, row.temperC]));
    await expect.poll(async () => byName(await bench.lines())).toEqual(byName(before));
    await bench.press("Undo");
    await expect.poll(() => bench.lines()).toEqual(before);
  });

  test("a filter hides rows, says how many, and goes away again", async () => {
    await bench.goTo(lineCell(0, "quench"));
    await inRows("Filter by this column …");
    await page().locator("dialog").getByRole("checkbox", { name: "fast oil" }).uncheck();
    await bench.press("Show these");
    await expect.poll(notice).toBe("4 of 6 rows are shown; the others are hidden, not gone.");
    expect(await steels()).toHaveLength(6);
    await bench.press("Show all rows");
    await expect.poll(() => page().locator("#notice").isHidden()).toBe(true);
  });

  test("outside a table a sentence says where rows can be worked", async () => {
    const before = await names();
    await bench.goTo("A1");
    await inRows("Take this row out");
    await expect.poll(notice).toMatch(/^Select a cell in a row of a table first/);
    await bench.press("Close");
    expect(await names()).toEqual(before);
  });
});

describe("days and text tables", () => {
  test("a day is shown and typed as a day in the field above the grid", async () => {
    await bench.sheet("Cover");
    const row = (await bench.table()).findIndex(([label]) => label === "Due");
    const cell = `B${row + 1}`;
    await bench.goTo(cell);
    const before = await page().inputValue("#cell-content");
    expect(before).toMatch(/^\d{4}-\d{2}-\d{2}$/);
    await bench.enter(cell, "2027-03-01");
    await bench.says(cell, "2027-03-01");
    expect(await page().inputValue("#cell-content")).toBe("2027-03-01");
    await bench.press("Undo");
    await expect.poll(() => page().inputValue("#cell-content")).toBe(before);
  });
});

describe("printing", () => {
  test("a sheet is looked at as it will be printed; Escape leads back to where one was", async () => {
    await bench.press("Print");
    const view = page().getByRole("dialog", { name: "Print" });
    await view.waitFor();
    await expect.poll(() => view.locator(".paper td", { hasText: "Chef knife 210" }).count()).toBe(1);
    // One page wide: nothing of the sheet stands outside its paper.
    const fits = await view
      .locator(".paper")
      .first()
      .evaluate((paper) => paper.scrollWidth <= paper.clientWidth + 1);
    expect(fits).toBe(true);
    await page().keyboard.press("Escape");
    await expect.poll(() => view.count()).toBe(0);
  });
});

test("a text table opens as a sheet of its own and is saved as a workbook", async () => {
  const buffer = Buffer.from("Steel;kg;Bought\nbar flat;2.5;2026-10-05\n007;=1+1;\n");
  await page().setInputFiles("#file", { name: "rack.csv", mimeType: "text/csv", buffer });
  await expect.poll(notice).toBe("Opened rack.csv: 3 rows. It is saved as rack.xlsx.");
  await bench.says("B2", "2.5");
  await bench.says("C2", "2026-10-05");
  await bench.says("A3", "007");
  await bench.says("B3", "=1+1");
  const download = page().waitForEvent("download");
  await bench.press("Save .xlsx");
  expect((await download).suggestedFilename()).toBe("rack.xlsx");
  await bench.press("Bring back").catch(() => undefined);
});

describe("undo by keys", () => {
  test("from a button of the pane takes back one step of the sheet, and brings it again", async () => {
    const [first, second] = [lineCell(0, "good"), lineCell(1, "good")];
    await bench.enter(first, "25");
    await bench.enter(second, "41");
    await page().locator("#pane").getByRole("button", { name: "Hold" }).click();
    await page().keyboard.press("Control+z");
    await bench.says(second, /^40$/);
    await bench.says(first, /^25$/);
    await page().locator("#pane").getByRole("button", { name: "Follow the selection" }).click();
    await page().keyboard.press("Control+y");
    await bench.says(second, /^41$/);
    for (let step = 0; step < 2; step += 1) await bench.press("Undo");
    await bench.says(first, /^24$/);
  });
});
