import { expect, test } from "vitest";
import { lineCell } from "../../src/workbook/sheets/lines-sheet";
import { Hands } from "./hands";
import { SIZE } from "./server";
import { type Workbench, workbenchPages } from "./session";

const workbench = workbenchPages("for each test");

/** The picture of the sheet, once it stands still. */
async function picture({ page }: Workbench): Promise<Buffer> {
  await page.waitForTimeout(800);
  return page.locator("#grid").screenshot();
}

/** The picture after the grid was made to draw all of it. */
async function drawnWhole(opened: Workbench): Promise<Buffer> {
  await opened.page.setViewportSize({ width: SIZE.width - 40, height: SIZE.height - 40 });
  await opened.page.waitForTimeout(300);
  await opened.page.setViewportSize(SIZE);
  return picture(opened);
}

test("after an edit the rows that changed show what a drawing of the whole sheet shows", async () => {
  const opened = workbench();
  const { bench } = opened;
  await bench.settled();
  const same = async (what: string) => {
    const rows = await picture(opened);
    expect(rows.equals(await drawnWhole(opened)), what).toBe(true);
  };
  await bench.sheet("Lines");
  await bench.enter(lineCell(1, "steel"), "5160");
  await bench.settled();
  await bench.sheet("Lines");
  await bench.goTo("B4");
  await same("a value with results in its row and in others");
  await bench.newSheet();
  await bench.enter("B4", "a text that reaches over the cells to its right");
  await bench.enter("A5", '=BLADE.TEMPERED_HRC("1095",{200;250;300})');
  await bench.says("A7", /^\d+/);
  await bench.goTo("A1");
  await same("a text that reaches over others, and a filled column");
  await bench.enter("C4", "short");
  await bench.goTo("A1");
  await same("a text beside it that cuts it off");
  await bench.enter("C4", "");
  await bench.enter("A6", "in the way");
  await bench.says("A5", /^#SPILL!/);
  await bench.goTo("A1");
  await same("what is free to reach over again, and a column that has no room any more");
});

test("what is typed in the grid itself, marks of lists and bold letters show what a drawing of the sheet shows", async () => {
  const opened = workbench();
  const { bench, page } = opened;
  await bench.settled();
  const same = async (what: string) => {
    const rows = await picture(opened);
    expect(rows.equals(await drawnWhole(opened)), what).toBe(true);
  };
  await bench.sheet("Lines");
  const hands = new Hands(page);
  await hands.settle();
  await hands.go(6, 2);
  await hands.type("no such steel", "Enter");
  await bench.settled();
  await same("a word that its list does not offer");
  await hands.go(6, 2);
  await hands.type("1095", "Enter");
  await bench.settled();
  await same("a word that it offers again");
  await hands.go(6, 1);
  await hands.type("A name that takes several lines in its cell", "Enter");
  await bench.settled();
  await same("a row that became higher, and those below it");
  await hands.go(7, 1);
  await page.keyboard.press("Control+b");
  await same("bold letters");
});
