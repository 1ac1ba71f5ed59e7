import type { Page } from "playwright-core";
import { beforeEach, expect, test } from "vitest";
import type { Bench } from "./bench";
import { type Workbench, workbenchPages } from "./session";

const workbench = workbenchPages("for all tests");
let opened: Workbench;
let bench: Bench;

beforeEach(() => {
  opened = workbench();
  ({ bench } = opened);
});

const pane = (page: Page) => page.locator("#pane");

async function openPage(name: string): Promise<void> {
  await pane(opened.page).getByRole("button", { name, exact: true }).click();
  await pane(opened.page).locator(`h2:text-is("${name}")`).waitFor();
}

/** Waits until the pane says something. */
async function paneSays(expected: string | RegExp): Promise<void> {
  await expect.poll(() => pane(opened.page).textContent()).toMatch(expected);
}

test("This cell follows the selection, explains a filled cell by its own row, and an error with the way out", async () => {
  await bench.settled();
  await openPage("This cell");
  await bench.sheet("Section");
  await bench.goTo("G6");
  await paneSays(/Filled by the formula in Section!G5\./);
  await paneSays(/\(row 2 of 6\)/);
  await bench.newSheet();
  await bench.enter("B1", "hot");
  await bench.enter("A1", '=BLADE.TEMPERED_HRC("1095",B1)');
  await bench.goTo("A1");
  await paneSays(/#VALUE! .*"hot".*Way out: Mend B1 \(temper C\)/s);
  await bench.enter("B1", "400 F");
  await bench.goTo("A1");
  // By hand, °C = (°F − 32) × 5 / 9: 400 °F is 204.4 °C.
  await paneSays(/B1: 400 F.*204 °C \(400 °F\)/s);
});

test("Repair takes a broken prefix off and leaves a formula that works", async () => {
  await bench.newSheet();
  await bench.enter("A1", '=[2]!_xldudf_BLADE_CARBON("1095")');
  await bench.says("A1", /^#NAME\?/);
  await openPage("Share and repair");
  await bench.press("Look through the workbook");
  await paneSays(/BLADE formula; 1 broken\./);
  await bench.press("Enter 1 formula anew");
  await paneSays("1 of 1 entered anew");
  // 95 hundredths of a percent: the designation says it (SAE numbering system).
  await bench.says("A1", "0.95");
});

test("a table goes to the selected cell as one step of undo, and to a sheet of its own", async () => {
  const { page } = opened;
  await bench.newSheet();
  await bench.goTo("B2");
  await openPage("Steels");
  await page.getByText("Put a table into the sheet").click();
  await page.getByLabel("Table", { exact: true }).selectOption("Composition");
  await bench.press("Put it at the selected cell");
  await paneSays(/Written into 'Sheet \d+'!B2:/);
  await bench.says("B4", "C");
  // The pane shows the steel of the line selected first, 52100; ASTM A295: C 0.93 to 1.05.
  await bench.says("C4", "0.93");
  await bench.press("Undo");
  await bench.says("B4", "Empty");
  await bench.says("B2", "Empty");
  await bench.press("Put it on a new sheet");
  await bench.says("A1", "Composition of 52100");
});

test("a cell that is gone to by its name takes what is typed next", async () => {
  const { page } = opened;
  await bench.newSheet();
  await page.fill("#cell-address", "G8");
  await page.press("#cell-address", "Enter");
  await page.keyboard.type("200", { delay: 30 });
  await page.keyboard.press("Enter");
  await bench.says("G8", "200");
});
