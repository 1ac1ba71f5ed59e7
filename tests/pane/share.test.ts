import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { launch } from "../browser";
import { planR07 } from "../workbook/answers/plans";
import { handMade, partsOf } from "../workbook/hand-made";
import { fakeExcel } from "./fake-excel";
import { choose, openPane } from "./open-pane";
import { type ServedFolder, serveFolder } from "./static-server";

let browser: Browser;
let served: ServedFolder;

beforeAll(async () => {
  served = await serveFolder(inject("pages"));
  browser = await launch();
});

afterAll(async () => {
  await browser?.close();
  served?.close();
});

const row = (cells: string) => `<sheetData><row r="1">${cells}</row></sheetData>`;

/** Carbon of 1095 by SAE J403: 0.90 to 1.03 %, its middle 0.965; the digits of the name give 0.95. */
const LIVE = handMade({
  sheets: {
    Plan: row('<c r="A1"><f>_xldudf_BLADE_CARBON("1095")</f><v>0.95</v></c>'),
    Costs: row('<c r="A1"><v>48</v></c>'),
  },
});

/** Excel hands the file over in slices and opens new workbooks from base64, as its documentation says. */
function fileCalls(bytes: Uint8Array): string {
  return `
    window.opened = [];
    window.filesClosed = 0;
    const bytes = ${JSON.stringify([...bytes])};
    const slices = [bytes.slice(0, 400), bytes.slice(400)];
    const done = (value) => ({ status: "succeeded", value });
    Office.AsyncResultStatus = { Succeeded: "succeeded" };
    Office.FileType = { Compressed: "compressed" };
    Office.context.requirements = { isSetSupported: () => true };
    Office.context.document.url = "https://forge.example/Run%20R-07.xlsx";
    Office.context.document.getFileAsync = (type, options, tell) => tell(done({
      size: bytes.length,
      sliceCount: slices.length,
      getSliceAsync: (at, tell) => tell(done({ data: slices[at], size: slices[at].length, index: at })),
      closeAsync: () => { window.filesClosed += 1; },
    }));
    Excel.createWorkbook = async (text) => { window.opened.push(text); };`;
}

async function paneIn(bytes: Uint8Array) {
  const before = (page: Page) => fakeExcel(page, "");
  const opened = await openPane(browser, { served, before });
  await opened.page.evaluate(fileCalls(bytes));
  await choose(opened.page, "Share and repair");
  return opened;
}

async function openedFile(page: Page): Promise<Record<string, string>> {
  await expect.poll(() => page.evaluate("window.opened.length"), { timeout: 25_000 }).toBe(1);
  const [text = ""] = await page.evaluate<string[]>("window.opened");
  return partsOf(new Uint8Array(Buffer.from(text, "base64")));
}

describe("Share and repair in Excel", () => {
  test("opens a copy with values only, of the sheets asked for", async () => {
    const { page, problems, kept } = await paneIn(LIVE);
    await page.getByRole("button", { name: "Make a share copy" }).click();
    await page.getByRole("button", { name: "Show what travels" }).click();
    await page.getByText("Say for whom the copy is, or tick the sheets.").waitFor();
    await page.getByLabel("Plan", { exact: true }).check();
    await page.getByRole("button", { name: "Show what travels" }).click();
    await page.getByText(/Sheets: Plan \(1 values/).waitFor();
    expect(await page.evaluate("window.opened")).toEqual([]);
    await page.getByRole("button", { name: "Open this copy" }).click();
    const parts = await openedFile(page);
    const all = Object.values(parts).join("");
    expect(all).not.toMatch(/_xldudf_|<f>/i);
    expect(parts["xl/workbook.xml"]).not.toContain("Costs");
    expect(all).toContain("Run R-07.xlsx");
    expect(all).toMatch(/=BLADE\.CARBON\(/);
    expect(await page.evaluate("window.filesClosed")).toBe(1);
    await page.getByText(/1 formula replaced by values; SHA-256/).waitFor();
    expect(problems).toEqual([]);
    expect(await kept()).toEqual([]);
    await page.context().close();
  });

  test("asks a supplier whom the plan does not name about the lines that are ticked", async () => {
    const { page, problems } = await paneIn(await planR07());
    await page.getByRole("button", { name: "Make a share copy" }).click();
    await page.getByLabel("Name of the steel supplier").fill("Grey Heron Steel");
    for (const line of ["L1", "L2", "L3", "L4", "L5"]) await page.getByLabel(line, { exact: true }).uncheck();
    await page.getByRole("button", { name: "Show what travels" }).click();
    await page.getByText("Tick at least one line to ask about.").waitFor();
    await page.getByLabel("L4", { exact: true }).check();
    await page.getByRole("button", { name: "Show what travels" }).click();
    await page.getByText(/Enquiry about lines L4, no order: Steel supplier: Grey Heron Steel/).waitFor();
    await page.getByRole("button", { name: "Open this copy" }).click();
    const all = Object.values(await openedFile(page)).join("");
    expect(all).toContain("Grey Heron Steel");
    // The plan buys L4 from another, whose name is nobody else's business.
    expect(all).not.toContain("Old Quay");
    expect(problems).toEqual([]);
    await page.context().close();
  });

  test("says why where the file cannot be read", async () => {
    const { page } = await paneIn(new Uint8Array([80, 75, 3, 4, 1, 2]));
    await page.getByRole("button", { name: "Make a share copy" }).click();
    await page.locator(".refusal").waitFor();
    expect(await page.locator(".refusal").textContent()).toMatch(/\w+ \w+/);
    expect(await page.evaluate("window.opened")).toEqual([]);
    await page.context().close();
  });

  test("opens the planning workbook", async () => {
    const { page, problems } = await paneIn(LIVE);
    await page.getByRole("button", { name: "Open a planning workbook" }).click();
    const parts = await openedFile(page);
    expect(parts["xl/workbook.xml"]?.match(/<sheet /g)?.length).toBeGreaterThan(15);
    expect(problems).toEqual([]);
    await page.context().close();
  });
});
