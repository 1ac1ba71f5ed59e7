import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";

// The steps by which a copy goes out of the workbench and its answers come home; tests and pictures take them.

const LONG = 300_000;

/** Bytes as a file field of a page takes them. */
export const asFile = (name: string, bytes: Uint8Array) => ({
  name,
  mimeType: "application/octet-stream",
  buffer: Buffer.from(bytes),
});

export type PageFile = ReturnType<typeof asFile>;

/** Waits until the page says so. */
export const said = (page: Page, words: RegExp | string): Promise<void> =>
  page.locator("#notice-words").filter({ hasText: words }).waitFor({ timeout: LONG });

const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();

export async function openFile(page: Page, name: string, bytes: Uint8Array): Promise<void> {
  await page.setInputFiles("#file", asFile(name, bytes));
  await said(page, `Opened ${name}`);
}

/** The dialog that asks for whom a copy is, once it can be answered. */
export async function shareDialog(page: Page): Promise<Locator> {
  await press(page, "Share copy");
  const dialog = page.getByRole("dialog", { name: "Share copy" });
  await dialog.getByRole("radio").first().waitFor({ timeout: LONG });
  return dialog;
}

/** Has the dialog list what travels and hands the copy out. @returns The copy, its list and its open cells. */
export async function handOut(page: Page, dialog: Locator) {
  await dialog.getByRole("button", { name: "Show what travels" }).click();
  const cells = dialog.getByText(/^Cells for an answer: /);
  await cells.waitFor({ timeout: LONG });
  const travels = await dialog.getByRole("listitem").allTextContents();
  const open = Number(/\d+/.exec((await cells.textContent()) ?? "")?.[0]);
  const download = page.waitForEvent("download");
  await press(page, "Hand out this copy");
  const copy = new Uint8Array(readFileSync(await (await download).path()));
  await said(page, "Noted in the register of the plan");
  return { copy, open, travels };
}

/** Reads answers in their dialog. @returns The dialog, and the figures of its line of counts. */
export async function readAnswers(page: Page, files: readonly PageFile[]) {
  await press(page, "Bring answers in");
  const dialog = page.getByRole("dialog", { name: "Bring answers in" });
  await dialog.locator("#answer-files").setInputFiles([...files]);
  await dialog.getByRole("button", { name: "Read the answers" }).click();
  const counts = dialog.getByText(/^Cells out /);
  await counts.waitFor({ timeout: LONG });
  const figures = [...((await counts.textContent()) ?? "").matchAll(/\d+/g)].map(Number);
  const [out = 0, answered = 0, fine = 0, doubted = 0, refused = 0, twice = 0, before = 0] = figures;
  return { dialog, counts: { out, answered, fine, doubted, refused, twice, before } };
}

/** Takes what is ticked. */
export async function takeTicked(page: Page, dialog: Locator, count: number): Promise<void> {
  await dialog.getByRole("button", { name: "Take the ticked answers" }).click();
  await said(page, `${count} answer${count === 1 ? "" : "s"} taken`);
}

const LABELS: Readonly<Record<string, string>> = {
  supplier: "Steel supplier",
  "heat-treater": "Heat treater",
  customer: "Customer",
};

/** Ticks the one whose lines alone are to travel. */
export const chooseOne = (dialog: Locator, whom: string, name: string): Promise<void> =>
  dialog.getByRole("radio", { name: new RegExp(`^${LABELS[whom]} ${name} alone`) }).check({ timeout: LONG });
