import { readFileSync } from "node:fs";
import { join } from "node:path";
import { unzipSync } from "fflate";
import { beforeEach, describe, expect, test } from "vitest";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { demoWorkbook } from "../../src/workbook/sheets/demo/demo-workbook";
import { lineCell } from "../../src/workbook/sheets/lines-sheet";
import { handMade, partsOf } from "../workbook/hand-made";
import type { Bench } from "./bench";
import { type Workbench, workbenchPages } from "./session";

const LIBREOFFICE = join(import.meta.dirname, "../workbook/files/saved-by-libreoffice.xlsx");

const workbench = workbenchPages("for each test");
let opened: Workbench;
let bench: Bench;

beforeEach(async () => {
  opened = workbench();
  ({ bench } = opened);
  await bench.settled();
});

const notice = () => opened.page.textContent("#notice-words");

/** Presses a button that hands a file out, and gives the file. */
async function handedOut(button: string): Promise<{ path: string; name: string; bytes: Uint8Array }> {
  const download = opened.page.waitForEvent("download");
  await bench.press(button);
  const file = await download;
  const path = await file.path();
  return { path, name: file.suggestedFilename(), bytes: new Uint8Array(readFileSync(path)) };
}

describe("saving and opening", () => {
  test("a changed run saved and opened again shows the same, cell by cell", async () => {
    const asPlanned = (await bench.line(1))?.temperC;
    expect(Number(asPlanned)).toBeGreaterThan(150);
    await bench.enter(lineCell(1, "steel"), "1084");
    await expect.poll(async () => Number((await bench.line(1))?.temperC)).toBeGreaterThan(150);
    await expect.poll(async () => (await bench.line(1))?.temperC).not.toBe(asPlanned);
    const before = await bench.table();
    const { path, name } = await handedOut("Save .xlsx");
    expect(name).toBe("Run R-07.xlsx");
    await bench.enter(lineCell(1, "steel"), "1095");
    await opened.page.setInputFiles("#file", path);
    // The sheets of the demo and the one that lists the words of its drop-downs.
    const sheets = demoWorkbook().sheets.length + 1;
    await expect.poll(notice).toMatch(new RegExp(`^Opened .*: ${sheets} sheets\\.$`));
    await bench.says(lineCell(1, "steel"), "1084");
    await expect.poll(() => bench.table()).toEqual(before);
  });

  test("a file of another program keeps every part but the sheet that was changed", async () => {
    await opened.page.setInputFiles("#file", LIBREOFFICE);
    await expect.poll(notice).toMatch(/^Opened saved-by-libreoffice\.xlsx/);
    const first = readLiveWorkbook(new Uint8Array(readFileSync(LIBREOFFICE))).sheets[0];
    const firstTab = () => opened.page.locator("#sheets button").first().textContent();
    await expect.poll(firstTab).toBe(first?.listed.name);
    await bench.enter("A40", "a note of ours");
    await bench.says("A40", "a note of ours");
    const { bytes } = await handedOut("Save .xlsx");
    const [before, after] = [partsOf(new Uint8Array(readFileSync(LIBREOFFICE))), partsOf(bytes)];
    expect(after[first?.listed.part ?? ""]).toContain("a note of ours");
    for (const part of Object.keys(after).filter((name) => !name.includes("worksheets/")))
      expect(after[part], part).toBe(before[part]);
    expect(await notice()).toMatch(/1 cell changed, everything else in the file left as it was/);
  });

  test("a share copy is for somebody, lists all that travels, and holds no function of ours", async () => {
    await bench.press("Share copy");
    const dialog = opened.page.getByRole("dialog", { name: "Share copy" });
    await dialog.getByRole("button", { name: "Show what travels" }).click();
    await dialog.getByText("Say for whom the copy is, or tick the sheets.").waitFor();
    await dialog.getByRole("radio", { name: "Sheets that I choose:" }).check();
    for (const box of await dialog.getByRole("checkbox").all()) await box.check();
    await dialog.getByRole("button", { name: "Show what travels" }).click();
    await dialog.getByText(/^Sheets: /).waitFor();
    const { name, bytes } = await handedOut("Hand out this copy");
    expect(name).toBe("Run R-07 for sharing.xlsx");
    const texts = Object.values(unzipSync(bytes)).map((part) => new TextDecoder().decode(part));
    expect(texts.filter((text) => text.includes("_xldudf_"))).toEqual([]);
    expect(texts.some((text) => text.includes("SHA-256"))).toBe(true);
    expect(await notice()).toMatch(/formulas replaced by values/);
  });

  test("“Opening …” closes with the sentence for any file that is refused, nothing changes, and the page stays usable", async () => {
    const sheet = '<!DOCTYPE a [<!ENTITY b "c">]><worksheet><sheetData/></worksheet>';
    const refused: readonly (readonly [name: string, bytes: Uint8Array, words: RegExp])[] = [
      ["empty.xlsx", new Uint8Array(), /^The file is not an \.xlsx workbook\.$/],
      [
        "typed.xlsx",
        handMade({ sheets: { Plan: "" }, parts: { "xl/worksheets/sheet1.xml": sheet } }),
        /entities of its own/,
      ],
      ["text.xlsx", new TextEncoder().encode("no workbook"), /^The file is not an \.xlsx workbook\.$/],
      [
        "open.xlsx",
        handMade({ sheets: { Plan: "<sheetData><row>" } }),
        /^Part xl\/worksheets\/sheet1\.xml of the file cannot be read/,
      ],
      ["cut.xlsx", new Uint8Array(readFileSync(LIBREOFFICE)).subarray(0, 3000), /\.$/],
    ];
    for (const [name, bytes, words] of refused) {
      await opened.page.setInputFiles("#file", {
        name,
        mimeType: "application/zip",
        buffer: Buffer.from(bytes),
      });
      await expect.poll(notice, { message: name }).toMatch(words);
      expect(await notice(), name).not.toMatch(/^Opening/);
      for (const button of ["#new-run", "#open", "#save", "#share"])
        expect(await opened.page.isEnabled(button), `${name} ${button}`).toBe(true);
    }
    await bench.settled();
    await bench.enter(lineCell(1, "good"), "17");
    await bench.says(lineCell(1, "good"), "17");
    await opened.page.setInputFiles("#file", LIBREOFFICE);
    await expect.poll(notice).toMatch(/^Opened saved-by-libreoffice\.xlsx/);
  });

  test("a new run comes from the template, and what stood there can be brought back", async () => {
    await bench.enter(lineCell(0, "good"), "31");
    await bench.says(lineCell(0, "good"), "31");
    await bench.press("New run");
    await expect.poll(notice).toMatch(/^A new run/);
    expect(await opened.page.locator("#sheets button").count()).toBeGreaterThan(15);
    await bench.press("Bring back");
    await expect.poll(notice).toMatch(/^Brought back Run R-07\.xlsx/);
    await bench.says(lineCell(0, "good"), "31");
  });
});

describe("editing", () => {
  test("a column is copied and pasted with its formulas following, and undone in one step", async () => {
    const { page } = opened;
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await bench.newSheet();
    for (const [cell, text] of [
      ["A1", "2"],
      ["A2", "3"],
      ["B1", "=A1*10"],
      ["B2", "=A2*10"],
    ] as const)
      await bench.enter(cell, text);
    await bench.says("B2", "30");
    const { x, y } = await bench.picture();
    // The picture takes the keys once it is clicked: B1 is the first cell but one of its first row.
    await page.mouse.click(x + 30 + 88 + 20, y + 20 + 10);
    await expect.poll(() => page.inputValue("#cell-address")).toBe("B1");
    await page.keyboard.press("Shift+ArrowDown");
    await page.waitForTimeout(300);
    await page.keyboard.press("Control+c");
    await page.waitForTimeout(500);
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => page.inputValue("#cell-address")).toBe("C1");
    await page.keyboard.press("Control+v");
    await expect.poll(() => page.inputValue("#cell-content")).toBe("=B1*10");
    await bench.says("C1", "200");
    await bench.says("C2", "300");
    await bench.press("Undo");
    await bench.says("C1", "Empty");
    await bench.press("Redo");
    await bench.says("C2", "300");
  });
});
