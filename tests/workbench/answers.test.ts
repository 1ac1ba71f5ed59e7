import { readFileSync } from "node:fs";
import { beforeAll, beforeEach, expect, test } from "vitest";
import { filledIn } from "../workbook/answers/fill";
import { planR07 } from "../workbook/answers/plans";
import type { Bench } from "./bench";
import { type Workbench, workbenchPages } from "./session";

// The orders of R-07 out to a supplier and home again, all of it in the page; the answer is saved by another library.

const LONG = 300_000;
const workbench = workbenchPages("for each test");
let opened: Workbench;
let bench: Bench;
let plan: Uint8Array;

beforeAll(async () => {
  plan = await planR07();
}, LONG);

beforeEach(async () => {
  opened = workbench();
  ({ bench } = opened);
  await bench.settled();
});

const notice = () => opened.page.textContent("#notice-words");
const file = (name: string, bytes: Uint8Array) => ({
  name,
  mimeType: "application/octet-stream",
  buffer: Buffer.from(bytes),
});

test(
  "a copy goes out, its answer comes home, and what is ticked stands in the plan",
  async () => {
    const { page } = opened;
    await page.setInputFiles("#file", file("Run R-07.xlsx", plan));
    await expect.poll(notice, { timeout: LONG }).toMatch(/^Opened Run R-07\.xlsx/);
    await bench.press("Share copy");
    const sharing = page.getByRole("dialog", { name: "Share copy" });
    await sharing
      .getByRole("radio", { name: /Steel supplier Old Quay Metals alone/ })
      .check({ timeout: LONG });
    await sharing.getByRole("button", { name: "Show what travels" }).click();
    await sharing.getByText(/Cells for an answer: 56 in 4 lines/).waitFor({ timeout: LONG });
    const download = page.waitForEvent("download");
    await bench.press("Hand out this copy");
    const copy = new Uint8Array(readFileSync(await (await download).path()));
    const answered = await filledIn(
      copy,
      { "Answer to order": { "L4/S4": { "Heat no.": "Q4-7731", "C %": 0.6, "S %": "<0.005" } } },
      { by: "order desk", on: "2026-09-22" },
    );
    await bench.press("Bring answers in");
    const dialog = page.getByRole("dialog", { name: "Bring answers in" });
    await dialog.locator("#answer-files").setInputFiles(file("answer.xlsx", answered));
    await dialog.getByRole("button", { name: "Read the answers" }).click();
    await dialog.getByText(/^Cells out 56, answered 3;/).waitFor({ timeout: LONG });
    const boxes = await dialog.getByRole("checkbox").all();
    const ticked = await Promise.all(boxes.map((box) => box.isChecked()));
    // The content given as a limit is doubtful and is left to the smith.
    expect(ticked.filter(Boolean)).toHaveLength(2);
    await dialog.getByRole("button", { name: "Take the ticked answers" }).click();
    await expect.poll(notice, { timeout: LONG }).toMatch(/^2 answers taken into Run R-07\.xlsx/);
    await bench.sheet("Steel and heats");
    await bench.says("D8", "Q4-7731");
    expect(await page.locator("#sheets button").allTextContents()).toContain("Answers");
  },
  LONG,
);
