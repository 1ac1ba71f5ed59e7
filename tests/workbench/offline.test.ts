import { expect, test } from "vitest";
import { PAGES } from "../../src/taskpane/page-list";
import { workbenchPages } from "./session";

const workbench = workbenchPages("for each test");

test("once it stands, every page of the pane and every formula works with the network gone", async () => {
  const { page, bench } = workbench();
  await bench.settled();
  // The page last in the list is fetched ahead with the others.
  await page.waitForFunction(
    () => performance.getEntriesByName(new URL("about.js", location.href).href).length > 0,
  );
  await page.waitForTimeout(1000);
  await page.context().setOffline(true);
  for (const { title } of Object.values(PAGES)) {
    await page.locator("#pane nav").getByRole("button", { name: title, exact: true }).click();
    await page.locator("#pane h2", { hasText: title }).waitFor();
    expect(await page.locator('#pane .refusal[role="alert"]').count(), title).toBe(0);
  }
  await bench.newSheet();
  await bench.enter("A1", '=ROUND(BLADE.MASS(100,50,4,"rectangle"),3)');
  // By hand: 100 × 50 × 4 mm³ at 7.85 g/cm³ (EN 1993-1-1, 3.2.6).
  await bench.says("A1", "157");
});

test("its policy lets nothing in but its own files; only the grid's styles are written by its scripts", async () => {
  const { page } = workbench();
  const policy = await page.getAttribute('meta[http-equiv="Content-Security-Policy"]', "content");
  const parts = new Map(
    (policy ?? "").split("; ").map((part) => [part.split(" ")[0], part.split(" ").slice(1).join(" ")]),
  );
  expect(parts.get("default-src")).toBe("'none'");
  expect(parts.get("script-src")).toBe("'self'");
  expect(parts.get("connect-src")).toBe("'self'");
  expect(policy).not.toMatch(/unsafe-eval|\*|https?:/);
});
